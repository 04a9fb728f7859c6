// What a look at trends is narrowed to: what is empty is never asked for, and a value that nobody told is one.

import test from 'node:test'
import assert from 'node:assert/strict'
import { asQuery, asked, inUse, keepFor, keptFor } from '../../static/trends/wanted.js'

const WANTED = { crew: ['2', ''], area: [], item: ['nail/dimple'], from: '2026-11-02', to: '' }

test('only what is in use is asked for, in an order that does not change', () => {
  assert.deepEqual(inUse(WANTED), ['crew', 'item', 'from'])
  assert.deepEqual(asked(WANTED), { crew: ['2', ''], item: ['nail/dimple'], from: '2026-11-02' })
  assert.deepEqual(asked({}), {})
})

test('an address names each value once for itself', () => {
  assert.equal(asQuery(WANTED).toString(), 'crew=2&crew=&item=nail%2Fdimple&from=2026-11-02')
})

test('each job keeps its own wishes while the app is open', () => {
  keepFor('one', { wanted: WANTED })
  keepFor('one', { by: 'crew' })
  assert.deepEqual(keptFor('one'), { wanted: WANTED, by: 'crew' })
  assert.deepEqual(keptFor('other'), { wanted: {}, by: 'item' })
})
