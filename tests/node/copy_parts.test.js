// A saved copy's archive: its headers, how it is cut for the way to the office, what the parts' answers come to.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { partsOf } from '../../static/copy/cut.js'
import { counted, isWhole, nothingYet, withPart } from '../../static/copy/outcome.js'
import { BLOCK, END, announced, header, padding } from '../../static/copy/tar.js'

const JOB = '01a214a6-cb82-7202-8202-020202020202'
const SHA = 'ab'.repeat(32)

/** @param {[string, number][]} members @returns {Uint8Array<ArrayBuffer>[]} */
function archive(members) {
  return [...members.flatMap(([path, size]) => [header(path, size, 0), new Uint8Array(size).fill(7), padding(size)]), END]
}

/** @param {Blob} file @param {number} [from] */
async function cut(file, from) {
  const parts = []
  for await (const part of partsOf(file, from)) parts.push(part)
  return parts
}

test('a header tells its size, and one with any byte changed is none', () => {
  const block = header(`photos/${JOB}/${SHA}`, 1000, 1764000000)
  assert.equal(announced(block), 1024)
  assert.equal(new TextDecoder().decode(block.subarray(0, 64)), SHA)
  for (let at = 0; at < BLOCK; at += 1) {
    const spoiled = block.slice()
    spoiled[at] ^= 1 << at % 8
    assert.equal(announced(spoiled), null, String(at))
  }
  assert.equal(announced(new Uint8Array(BLOCK)), null)
  assert.equal(announced(block.subarray(0, 511)), null)
  assert.throws(() => header('x'.repeat(101), 1, 0), RangeError)
  assert.throws(() => header('x', 8 ** 11, 0), RangeError)
})

test('the parts of a copy are cut between members, each an archive of its own, and together they are the file', async () => {
  const sizes = [30_000, 1000, 900_000, 4_000_000, 0, 511, 512, 700_000, 700_000]
  const file = new Blob(archive(sizes.map((size, n) => [`entries/${String(n).padStart(43, '0')}`, size])))
  const parts = await cut(file)
  assert.ok(parts.length > 3)
  const joined = []
  for (const { from, to, body } of parts) {
    const bytes = new Uint8Array(await body.arrayBuffer())
    assert.notEqual(announced(bytes.subarray(0, BLOCK)), null, 'it begins with a header')
    assert.ok(to - from <= 1024 * 1024 || announced(bytes.subarray(0, BLOCK)) === to - from - BLOCK, 'one member, where it is larger')
    assert.ok(bytes.subarray(-2 * BLOCK).every((byte) => byte === 0), 'it ends as an archive does')
    joined.push(file.slice(from, to))
  }
  assert.deepEqual(parts.map(({ from }) => from), [0, ...parts.slice(0, -1).map(({ to }) => to)])
  assert.equal(parts.at(-1)?.to, file.size)
  assert.deepEqual(await new Blob(joined).arrayBuffer(), await file.arrayBuffer())
  assert.deepEqual((await cut(file, parts[1].from)).map(({ from }) => from), parts.slice(1).map(({ from }) => from), 'gone on with')
})

test('what is no copy, or claims more than any member has, goes along in bearable parts', async () => {
  const noise = new Uint8Array(3_000_000).map((_, at) => (at * 7919) % 251)
  for (const front of [[], [header('entries/' + 'a'.repeat(43), 8 ** 11 - 1, 0)]]) {
    const file = new Blob([...front, noise])
    const parts = await cut(file)
    assert.ok(parts.length >= 3 && parts.every(({ from, to }) => to - from <= 1024 * 1024))
    assert.equal(parts.at(-1)?.to, file.size)
  }
  assert.deepEqual(await cut(new Blob([])), [])
})

test('what one part lists and another brings is told of once, as it came', () => {
  const photo = { what: 'photo', job: JOB, name: SHA }
  const first = { at: 'then', copy: 'id', sealed: true, seals: [{ kid: 'k', state: 'good' }], damage: [],
    items: [{ what: 'entry', job: JOB, name: 'a', status: 'accepted', kind: 'walk', at: 'x' }, { ...photo, status: 'absent', kind: 'photo', at: 'y', who: 'Ann', code: 'copy_absent' }] }
  const second = { at: null, copy: null, sealed: false, seals: [], damage: [{ code: 'padding', at: 5, value: '' }], items: [{ ...photo, status: 'accepted' }] }
  const half = withPart(nothingYet(), first, 0)
  assert.deepEqual(counted(half), { accepted: 1, absent: 1 })
  assert.equal(isWhole(half), false)
  const all = withPart(half, { ...second, damage: [] }, 9000)
  assert.deepEqual(counted(all), { accepted: 2 })
  assert.equal(all.came.get(`photo/${JOB}/${SHA}`)?.who, 'Ann')
  assert.equal(isWhole(all), true)
  const spoiled = withPart(half, second, 9000)
  assert.equal(spoiled.damage[0].at, 9005)
  assert.equal(isWhole(spoiled), false)
  assert.equal(isWhole(withPart(all, { ...second, damage: [], items: [{ what: 'entry', job: JOB, name: 'b', status: 'accepted' }] }, 1)), false, 'more than was listed')
  assert.equal(isWhole(withPart(nothingYet(), { ...first, sealed: false }, 0)), false)
})
