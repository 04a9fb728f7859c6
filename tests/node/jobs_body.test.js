// A job said again with other instruments: everything else word for word as it stood.

import assert from 'node:assert/strict'
import test from 'node:test'
import { jobBody, statedBy } from '../../static/jobs/job_body.js'

const ours = { uncertainty: { value: '0.0625', unit: 'in' }, source: '', own: false }
const own = { uncertainty: { value: '0.0004', unit: 'in' }, source: 'own check', own: true }
const body = { name: 'Shed', units: 'US', parties: [{ role: 'owner', name: 'N' }], from_a_later_build: { kept: true } }
const folded = { ...body, instruments: { tape: ours, micrometer: own }, acceptance: 'simple', id: 'j', digest: 'd', by: 'p', at: 't', clock: {}, heads: ['d'] }

test('what the job itself states is kept, and our own default is never written down as the job\'s', () => {
  assert.deepEqual(statedBy(folded), { micrometer: { value: '0.0004', unit: 'in', source: 'own check' } })
  assert.deepEqual(jobBody(folded, statedBy(folded), 'simple'),
    { ...body, instruments: { micrometer: { uncertainty: { value: '0.0004', unit: 'in' }, source: 'own check' } }, acceptance: 'simple' })
})

test('back to every default leaves neither instruments nor acceptance behind', () => {
  assert.deepEqual(jobBody(folded, {}, ''), body)
})
