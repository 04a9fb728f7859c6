// One thing held by two people on a phone (others' entries are sent again after a server was set back): where one copy of
// it is damaged or gone, the other one's goes into the saved copy.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { test } from 'node:test'

const target = new EventTarget()
Object.assign(globalThis, { window: globalThis, location: { href: 'https://office.invalid/' }, addEventListener: target.addEventListener.bind(target),
  dispatchEvent: target.dispatchEvent.bind(target) })

const { withDb } = await import('../../static/storage/database.js')
const { unsentThings } = await import('../../static/copy/unsent.js')
const { digestOf } = await import('../../static/entry/digest.js')
const { somebody } = await import('./somebody.js')

const JOB = '01a00000-0000-7000-8000-000000000001', ANN = '01a00000-0000-7000-8000-000000000002', BEN = '01a00000-0000-7000-8000-000000000003'
for (const person of [ANN, BEN]) await somebody(person)

/** @param {string} token @param {(token: string) => string | null} kept of each person: what stands in the store, null for nothing */
async function hold(token, ...kept) {
  const name = await digestOf(token.slice(0, token.lastIndexOf('.')))
  for (const [n, person] of [ANN, BEN].entries()) {
    const row = { person, seq: n, what: 'entry', name, job: JOB, size: token.length, kind: 'walk', at: '', state: 'waiting' }
    const stands = kept[n](token)
    await withDb(['outbox', 'entries'], 'readwrite', async (tx) => {
      await tx.objectStore('outbox').put(row)
      if (stands !== null) await tx.objectStore('entries').put({ person, digest: name, job: JOB, token: stands })
    })
  }
  return name
}

const sound = (/** @type {string} */ token) => token
const damaged = (/** @type {string} */ token) => `x${token.slice(1)}`
const gone = () => null

test('a damaged or lost entry of one person hides nobody else\'s sound one', async () => {
  const names = {
    first: await hold('aa.bb.cc', damaged, sound), second: await hold('ab.bb.cc', sound, damaged),
    lost: await hold('ac.bb.cc', gone, sound), both: await hold('ad.bb.cc', gone, damaged),
  }
  const found = new Map()
  for await (const { item, bytes } of unsentThings()) {
    assert.ok(!found.has(item.name), 'told twice')
    found.set(item.name, bytes ? new TextDecoder().decode(bytes) : item.damage)
  }
  assert.deepEqual(Object.fromEntries(Object.entries(names).map(([what, name]) => [what, found.get(name)])),
    { first: 'aa.bb.cc', second: 'ab.bb.cc', lost: 'ac.bb.cc', both: 'entry_damaged' })
})
