// A job said again with other instruments: everything else word for word as it stood.

import assert from 'node:assert/strict'
import test from 'node:test'
import { jobBody, samplingOf, statedBy } from '../../static/jobs/job_body.js'

const ours = { uncertainty: { value: '0.0625', unit: 'in' }, source: '', own: false }
const own = { uncertainty: { value: '0.0004', unit: 'in' }, source: 'own check', own: true }
const sampling = { major: { level: 'S-4', aql: '2.5' }, minor: { level: 'II', aql: '4' }, places: 3, own: ['minor'] }
const body = { name: 'Shed', units: 'US', parties: [{ role: 'owner', name: 'N' }], from_a_later_build: { kept: true } }
const folded = { ...body, instruments: { tape: ours, micrometer: own }, acceptance: 'simple', sampling, id: 'j', digest: 'd', by: 'p', at: 't', clock: {}, heads: ['d'] }

test('what the job itself states is kept, and our own default is never written down as the job\'s', () => {
  assert.deepEqual(statedBy(folded), { micrometer: { value: '0.0004', unit: 'in', source: 'own check' } })
  assert.deepEqual(jobBody(folded, statedBy(folded), 'simple', samplingOf(folded)),
    { ...body, instruments: { micrometer: { uncertainty: { value: '0.0004', unit: 'in' }, source: 'own check' } }, acceptance: 'simple',
      sampling: { minor: { level: 'II', aql: '4' } } })
})

test('back to every default leaves neither instruments, acceptance nor sampling behind', () => {
  assert.deepEqual(jobBody(folded, {}, '', {}), body)
})
