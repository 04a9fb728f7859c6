// A run of distances typed or dictated: all of it understood, or what was not is named.

import assert from 'node:assert/strict'
import test from 'node:test'
import { distances } from '../../static/instruments/distances.js'

const inches = (text) => distances(text, 'in', 200)

test('decimals, fractions of a tape and a decimal comma are read as they are typed', () => {
  assert.deepEqual(inches('11.5 12 1/4 12,5'), { values: ['11.5', '12.25', '12.5'], wrong: [] })
  assert.deepEqual(inches('12-3/8; 1/2, 11½\n12 1/64'), { values: ['12.375', '0.5', '11.5', '12.015625'], wrong: [] })
  assert.deepEqual(distances('305 310.5mm 298', 'mm', 5000), { values: ['305', '310.5', '298'], wrong: [] })
})

test('a dictated list is read with its units and its and', () => {
  assert.deepEqual(inches('12 inches, 11 and 12 and 1/4 inches'), { values: ['12', '11', '12.25'], wrong: [] })
  assert.deepEqual(inches('12 pulgadas y 11 1/2"'), { values: ['12', '11.5'], wrong: [] })
})

test('a unit, a comma or a line ends a distance, so that the next fraction is one of its own', () => {
  for (const text of ['12 in 1/4 in', '12, 1/4', '12; 1/4', '12\n1/4']) assert.deepEqual(inches(text).values, ['12', '0.25'], text)
})

test('what is not understood is named, and never read as something near it', () => {
  const cases = { '12..5': '12..5', '11,13': '11,13', '12,13,12': '12,13,12', '-4': '-4', '5/4': '5/4', '12 1/3': '1/3', '3 ft': 'ft', 'twelve': 'twelve', '12 mm': 'mm', '1e2': 'e2' }
  for (const [text, word] of Object.entries(cases)) assert.ok(inches(text).wrong.includes(word), `${text}: ${inches(text).wrong}`)
})

test('no distance is nothing, and none is longer than a panel could be', () => {
  assert.deepEqual(inches('0 12 201').wrong, ['0', '201'])
  assert.deepEqual(inches('  '), { values: [], wrong: [] })
})
