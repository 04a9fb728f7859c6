// Which temperature of the metal speaks for a moment, and how old it then is.

import assert from 'node:assert/strict'
import test from 'node:test'
import { allTaken, due, inReading, ofAnswer, ofWalk, speaking, wantsMetal } from '../../static/instruments/metal.js'

const MINUTE = 60_000
const DOUBT = { value: '4', unit: 'dF' }
const at = (minutes, value = '74') => ({ value, unit: 'F', uncertainty: DOUBT, by: 'contact', at: minutes * MINUTE })
const walk = { at: '1970-01-01T00:05:00.000+00:00', metal_temperature: { value: '74', unit: 'F' }, metal_uncertainty: DOUBT, metal_temperature_by: 'contact' }

test('the walk itself brings the first temperature, taken when the walk was entered', () => {
  assert.deepEqual(ofWalk(walk), at(5))
  assert.equal(ofWalk({ at: walk.at }), null)
})

test('a temperature speaks for ten minutes and no second longer', () => {
  assert.equal(due(speaking([at(0)], [], 10 * MINUTE)), false)
  assert.equal(due(speaking([at(0)], [], 10 * MINUTE + 999)), false)
  assert.equal(due(speaking([at(0)], [], 10 * MINUTE + 1000)), true)
  assert.equal(due(speaking([], [], 0)), true)
})

test('the nearest in time speaks, before the moment or after it, in whole seconds', () => {
  const all = [at(0, '60'), at(20, '80')]
  assert.deepEqual([speaking(all, [], 9 * MINUTE).value, speaking(all, [], 12 * MINUTE).value], ['60', '80'])
  assert.equal(speaking(all, [], 20 * MINUTE - 1500).age, 1)
})

test('no temperature speaks across a change of sun or shade', () => {
  const all = [at(0, '60'), at(4, '90')]
  assert.equal(speaking(all, [3 * MINUTE], 2.9 * MINUTE).value, '60')
  assert.equal(speaking(all, [3 * MINUTE], 3.1 * MINUTE).value, '90')
  assert.equal(speaking([at(0)], [3 * MINUTE], 4 * MINUTE), null)
  assert.equal(speaking([at(4)], [3 * MINUTE], 2 * MINUTE), null, 'nor back to before it')
})

test('correcting the crew of a walk does not make its metal newly measured; another number does', () => {
  const kept = { first: at(5), taken: [at(30, '90')], changed: [] }
  const later = { ...walk, at: '1970-01-01T01:00:00.000+00:00' }
  assert.deepEqual(allTaken(later, kept), [at(5), at(30, '90')])
  const warmer = { ...later, metal_temperature: { value: '88', unit: 'F' } }
  assert.deepEqual(allTaken(warmer, kept).map((one) => [one.value, one.at / MINUTE]), [['74', 5], ['88', 60], ['90', 30]])
})

test('a reading carries temperature, doubt, instrument and age, in whole seconds', () => {
  assert.deepEqual(inReading(speaking([at(0)], [], 90_400)),
    { metal_temperature: { value: '74', unit: 'F' }, metal_uncertainty: DOUBT, metal_by: 'contact', metal_age: 90 })
})

test('the temperature that an earlier answer carried serves its own picture and no other', () => {
  const answer = { photos: ['aa'], reading: { third: 'middle', ...inReading(speaking([at(0)], [], 2 * MINUTE)) } }
  assert.equal(speaking([ofAnswer(answer, 'aa', 50 * MINUTE)], [], 50 * MINUTE).age, 120)
  assert.equal(ofAnswer(answer, 'bb', 50 * MINUTE), null)
  assert.equal(ofAnswer({ photos: ['aa'], reading: { third: 'middle' } }, 'aa', 0), null)
})

test('only a rule that reads the metal at the reading asks for it', () => {
  assert.equal(wantsMetal({ rule: { inputs: { metal_now: 'reading.metal_temperature' } } }), true)
  assert.equal(wantsMetal({ rule: { inputs: { metal_now: 'walk.metal_temperature' } } }), false)
  assert.equal(wantsMetal({ rule: null }), false)
})
