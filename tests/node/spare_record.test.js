// A file of the spare copy that is damaged or was cut off: all else in it is still read.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { itemsOf, packed } from '../../static/spare/record.js'

const bytes = (/** @type {string} */ text) => new TextEncoder().encode(text)
const THINGS = [
  await packed({ what: 'entry', person: 'ana', name: 'one' }, bytes('{"what":"no line of ours')),
  await packed({ what: 'photo', person: 'ana', name: 'two' }, bytes('\0'.repeat(40))),
  await packed({ what: 'entry', person: 'ben', name: 'three' }, bytes('')),
  await packed({ what: 'entry', person: 'ben', name: 'four' }, bytes('last')),
]
const FILE = new Uint8Array(await new Blob(THINGS).arrayBuffer())
const ENDS = THINGS.map((_, n) => THINGS.slice(0, n + 1).reduce((sum, { length }) => sum + length, 0))

/** @param {Uint8Array<ArrayBuffer>[]} parts */
async function read(...parts) {
  const found = []
  for await (const { head, body } of itemsOf(new Blob(parts))) found.push(`${head.name} ${await body.text()}`)
  return found
}

const ALL = await read(FILE)

test('what was put in is read in its order, and room taken ahead is none of it', async () => {
  assert.deepEqual(ALL.map((one) => one.split(' ')[0]), ['one', 'two', 'three', 'four'])
  assert.deepEqual(await read(FILE, new Uint8Array(600_000)), ALL)
  assert.deepEqual(await read(new Uint8Array(600_000)), [])
})

test('cut off at any byte all that was whole before is read', async () => {
  for (let length = 0; length < FILE.length; length += 1) {
    assert.deepEqual(await read(FILE.slice(0, length)), ALL.slice(0, ENDS.filter((end) => end <= length).length), `${length}`)
  }
})

test('a flipped bit takes at most the thing that it stands in', async () => {
  for (let at = 0; at < FILE.length; at += 1) {
    const changed = FILE.slice()
    changed[at] ^= 1 << (at % 8)
    const hit = ENDS.findIndex((end) => at < end)
    const found = await read(changed)
    for (const [n, one] of ALL.entries()) assert.ok(n === hit || found.includes(one), `byte ${at}: ${one}`)
    assert.ok(found.length <= ALL.length && !found.some((one) => !one.startsWith(ALL[hit].split(' ')[0]) && !ALL.includes(one)), `byte ${at}`)
  }
})
