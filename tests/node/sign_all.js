// Reads payloads as a JSON list from standard input; prints the key made for them, the tokens and their digests.

import { text } from 'node:stream/consumers'

import { makeKey } from '../../static/entry/key.js'
import { signEntry } from '../../static/entry/sign.js'

const key = await makeKey()
const signed = []
for (const payload of JSON.parse(await text(process.stdin))) signed.push(await signEntry(payload, key))
process.stdout.write(JSON.stringify({ kid: key.kid, jwk: key.jwk, signed }))
