// How the day's screens put together what the record says: which comes first, what a mark goes over, distances by tape.

import assert from 'node:assert/strict'
import test from 'node:test'
import { asked, nextPanels } from '../../static/day/blank_plan.js'
import { doneOf, stepsOf } from '../../static/day/night_steps.js'
import { missedStops } from '../../static/day/missed.js'
import { goneOver, nextPanel, openLots, plannedTo, revealed, standing, stopsDrawn } from '../../static/day/standing.js'
import { tape } from '../../static/frame/tape.js'

const LOT = { id: 'k/work/0', by: 'ann', at: '2026-09-14T07:00', day: '2026-09-14', purpose: 'work', closed: false, crew: 'two', placed_to: 8, open_panel: 8, marks: [],
  population: [{ area: 'quay', from: 1, to: 12 }], extensions: [], holds: [], drawn: [{ state: 'sealed' }, { state: 'next', panel: 9 }, { state: 'looked', panel: 2 }] }
const lot = (/** @type {any} */ with_) => ({ ...LOT, ...with_ })
const record = (/** @type {any[]} */ ...lots) => ({ lots: Object.fromEntries(lots.map((one) => [one.id, one])), areas: { quay: { panel_count: 48, assembly: 'flange' } }, walks: {} })
const hold = (/** @type {number} */ panel, /** @type {string} */ state) => ({ panel, why: 'first', state })

test('a hold comes before a stop, a stop before going on', () => {
  const due = { state: 'due', panel: 8 }
  const both = lot({ holds: [hold(8, 'open')], drawn: [due] })
  assert.equal(standing(record(both), both).state, 'hold')
  const stop = lot({ holds: [hold(1, 'released')], drawn: [due] })
  assert.equal(standing(record(stop), stop).state, 'stop')
  assert.equal(standing(record(LOT), LOT).state, 'go')
  assert.equal(standing(record(LOT), lot({ placed_to: null })).state, 'start')
})

test('what is sealed is counted and never named', () => {
  assert.deepEqual(revealed(record(LOT), LOT).map((one) => one.panel), [2, 9])
  assert.equal(stopsDrawn(record(LOT), LOT), 3)
})

test('a lot and its extension are one day', () => {
  const further = lot({ id: 'k/work/1', extends: 'k/work/0', population: [{ area: 'quay', from: 13, to: 20 }], drawn: [{ state: 'next', panel: 13 }] })
  const first = lot({ extensions: ['k/work/1'] })
  assert.equal(plannedTo(record(first, further), first), 20)
  assert.deepEqual(revealed(record(first, further), first).map((one) => one.panel), [2, 9, 13])
  assert.deepEqual(openLots(record(first, further), { id: 'ann' }).map((one) => one.id), ['k/work/0'])
  assert.equal(nextPanels(record(first, further), { id: 'ann' }, 'quay').from, 21)
})

test('a mark goes over a hold that waits below it, not over one at its own panel', () => {
  const held = lot({ holds: [hold(8, 'open'), hold(9, 'ahead'), hold(3, 'released'), hold(2, 'covered_against')] })
  assert.deepEqual(goneOver(held, 9), [8])
  assert.deepEqual(goneOver(held, 10), [8, 9])
  assert.deepEqual(goneOver(held, 8), [])
  assert.equal(nextPanel(held), 9)
  assert.equal(nextPanel(lot({ placed_to: null, population: [{ area: 'quay', from: 25, to: 30 }] })), 25)
})

test('only a stop that the next mark would hide is missed by it', () => {
  const drawn = ['part', 'due', 'next'].map((state, at) => ({ state, panel: [3, 8, 9][at] }))
  assert.deepEqual(missedStops(record(LOT), lot({ drawn }), 9), [8])
  assert.deepEqual(missedStops(record(LOT), lot({ drawn }), 10), [8, 9])
})

test('only as strict as the series or stricter may be chosen', () => {
  assert.deepEqual(asked('normal'), { proposed: 'normal', choices: ['normal', 'tightened'] })
  assert.deepEqual(asked('reduced').choices, ['reduced', 'normal', 'tightened'])
  assert.deepEqual(asked('stopped'), { proposed: 'tightened', choices: ['tightened'] })
})

test('a distance is told as a tape shows it', () => {
  const told = (/** @type {string} */ value, /** @type {string} */ unit) => tape({ value, unit }).replaceAll('\u00a0', ' ')
  assert.equal(told('7.5', 'ft'), '7 ft 6 in')
  assert.equal(told('7', 'ft'), '7 ft')
  assert.equal(told('0.7083', 'ft'), '8 1/2 in')
  assert.equal(told('11.9999', 'ft'), '12 ft')
  assert.equal(told('90', 'in'), '7 ft 6 in')
  assert.equal(told('2.2859', 'm'), '2.29 m')
  assert.equal(told('0.0417', 'ft'), '1/2 in')
})

test('the steps of the night are done by answers and by places, not by a look at the screen', () => {
  const own = { id: 'end-of-day-walk', items: ['labels', 'night_seal', 'nothing_loose', 'night_seam'].map((id) => ({ id })) }
  const steps = stepsOf(own)
  assert.deepEqual(steps.map((items) => items.map((item) => item.id)), [['night_seal', 'nothing_loose'], ['night_seam'], ['labels']])
  const night = { places: [{ station: 's' }, { station: null }] }
  const answers = { 'w/end-of-day-walk/night_seal': {}, 'w/end-of-day-walk/nothing_loose': {} }
  assert.deepEqual(doneOf({ answers }, own, { id: 'w' }, night, steps), [true, false, false, false])
  assert.deepEqual(doneOf({ answers }, own, null, { places: [] }, steps), [false, false, true, false])
})
