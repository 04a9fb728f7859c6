// Run the page's own check, without its page, on zips: `node check_packages.mjs KNOWN ZIP...` prints a line of JSON for
// each, what `check` found or why the zip does not read.

import { openAsBlob, readFileSync } from 'node:fs'
import { check, fingerprintIn } from '../../static/verify/check.js'
import { packageInZip } from '../../static/verify/package.js'
import { Unreadable } from '../../static/verify/unreadable.js'

const [known, ...zips] = process.argv.slice(2)
for (const zip of zips) console.log(JSON.stringify(await found(zip)))

async function found(zip) {
  try {
    const files = await packageInZip(await openAsBlob(zip))
    const { facts, drawn } = await check(files, JSON.parse(readFileSync(known, 'utf-8')))
    return { facts, drawn, fingerprint: await fingerprintIn(files) }
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error
    return { unreadable: error.code, ...error.facts }
  }
}
