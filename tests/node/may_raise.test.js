import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import test from 'node:test'

import { MAY_RAISE } from '../../static/roof/findings_here.js'

test('a finding is written down by whom the record lets', () => {
  const table = readFileSync(new URL('../../inspect_app/record/authority.py', import.meta.url), 'utf8')
  const told = table.match(/"finding": \(([^)]*)\)/)?.[1] ?? ''
  assert.deepEqual([...MAY_RAISE].sort(), [...told.matchAll(/"(\w+)"/g)].map(([, role]) => role).sort())
})
