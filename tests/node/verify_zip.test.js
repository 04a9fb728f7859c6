// The page's reader of zips: whatever was done to one, it reads the files that are there, or says that it does not.

import assert from 'node:assert/strict'
import test from 'node:test'
import { filesInZip } from '../../static/verify/zip.js'
import { Unreadable } from '../../static/verify/unreadable.js'

const FILES = { 'bag/bagit.txt': 'BagIt', 'bag/data/a.txt': 'one', 'bag/data/ñ.txt': '' }
const text = new TextEncoder()

/** A stored zip, by PKWARE's note; `change` turns a member's fields before they are written. */
function zip(files = FILES, change = (/** @type {any} */ fields) => fields, tail = '') {
  const parts = [], listed = []
  let at = 0
  for (const [name, data] of Object.entries(files)) {
    const [named, bytes] = [text.encode(name), text.encode(data)]
    const f = change({ name, flags: 0x800, method: 0, attributes: 0o100644 * 65536, size: bytes.length, packed: bytes.length, local: named, at })
    const local = head(0x04034b50, [20, 2], [f.flags, 2], [f.method, 2], [0, 4], [0, 4], [f.packed, 4], [f.size, 4], [f.local.length, 2], [0, 2])
    parts.push(local, f.local, bytes)
    listed.push(head(0x02014b50, [788, 2], [20, 2], [f.flags, 2], [f.method, 2], [0, 4], [0, 4], [f.packed, 4], [f.size, 4], [named.length, 2], [0, 2], [0, 2], [0, 2], [0, 2], [f.attributes, 4], [f.at, 4]), named)
    at += local.length + f.local.length + bytes.length
  }
  const list = joined(listed)
  const count = Object.keys(files).length
  return joined([...parts, list, head(0x06054b50, [0, 2], [0, 2], [count, 2], [count, 2], [list.length, 4], [at, 4], [tail.length, 2]), text.encode(tail)])
}

function head(signature, ...fields) {
  const whole = [[signature, 4], ...fields]
  const view = new DataView(new ArrayBuffer(whole.reduce((sum, [, size]) => sum + size, 0)))
  let at = 0
  for (const [value, size] of whole) {
    if (size === 2) view.setUint16(at, value, true)
    else view.setUint32(at, value, true)
    at += size
  }
  return new Uint8Array(view.buffer)
}

const joined = (parts) => new Uint8Array(parts.flatMap((one) => [...one]))

async function read(bytes) {
  const found = {}
  for (const [name, file] of await filesInZip(new Blob([bytes]))) found[name] = await file.text()
  return found
}

test('a stored zip is read, with a remark at its end too', async () => {
  assert.deepEqual(await read(zip()), FILES)
  assert.deepEqual(await read(zip(FILES, undefined, 'a remark')), FILES)
})

const first = (change) => (fields) => (fields.name === 'bag/bagit.txt' ? { ...fields, ...change } : fields)
for (const [what, change, code] of [
  ['packed', { method: 8 }, 'zip_packed'],
  ['encrypted', { flags: 0x801 }, 'zip_packed'],
  ['a link', { attributes: 0o120777 * 65536 }, 'zip_link'],
  ['unpacks to more', { size: 4_000_000 }, 'zip_damaged'],
  ['named otherwise at its place', { local: text.encode('bag/bagit.tx_') }, 'zip_damaged'],
  ['not at its place', { at: 7 }, 'zip_damaged'],
]) {
  test(`a member that is ${what} is refused`, () => assert.rejects(read(zip(FILES, first(change))), (error) => error instanceof Unreadable && error.code === code))
}

test('two members in one place are refused', () => assert.rejects(read(zip(FILES, (fields) => ({ ...fields, at: 0 }))), Unreadable))

test('every byte turned and every cut reads as the same files, as other contents of them, or not at all', async () => {
  const whole = zip()
  for (let at = 0; at < whole.length; at += 1) {
    for (const bytes of [whole.map((byte, index) => (index === at ? byte ^ 0xff : byte)), whole.slice(0, at)]) {
      try {
        const found = await read(bytes)
        assert.equal(Object.keys(found).length, 3)
      } catch (error) {
        assert.ok(error instanceof Unreadable, String(error))
      }
    }
  }
})
