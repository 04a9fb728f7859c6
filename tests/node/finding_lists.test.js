// Which findings a list shows, whose list a crew's is, and in which order they are walked to.

import assert from 'node:assert/strict'
import test from 'node:test'
import { choices, fits, onceEach, stepsOf, wantedBy } from '../../static/finding/filter.js'
import { sameCrew } from '../../static/record/crew.js'
import { chosenCrew, crewsToday, isTicked, tasks, tickOf } from '../../static/finding/tasks.js'
import { findingsInOrder } from '../../static/roof/order.js'

const one = (id, state, area, crew) => ({ id, state, area, crew })
const ALL = [one('1', 'open', 'quay', 'Crew 2'), one('2', 'corrected', 'quay', ' crew  2 '), one('3', 'closed', 'yard', 'Crew 10'),
  one('4', 'open', 'yard', null), one('5', 'conceded', 'quay', 'Crew 2'), one('6', 'withdrawn', null, ''), one('7', 'open', 'yard', 'Crew 10')]
const shown = (wanted) => ALL.filter((finding) => fits(finding, wanted)).map(({ id }) => id).join('')

test('without a wish a list shows what is still to do, with one just that', () => {
  assert.equal(shown(wantedBy([])), '1247')
  assert.equal(shown(wantedBy(['state', 'all'])), '1234567')
  assert.equal(shown(wantedBy(['state', 'closed', 'area', 'yard'])), '3')
  assert.equal(shown(wantedBy(['area', 'quay', 'crew', 'CREW 2'])), '12')
  assert.equal(shown(wantedBy(['state', 'nonsense'])), '')
})

test('a wish and its address say the same', () => {
  for (const wanted of [wantedBy([]), { state: 'open', area: 'quay', crew: 'Crew 2' }, { state: 'all', area: '', crew: 'Crew 10' }]) {
    assert.deepEqual(wantedBy(stepsOf(wanted)), wanted)
  }
})

test('each choice tells how many it would show beside the other wishes, and no state is offered that nobody has', () => {
  const { states, areas, crews } = choices(ALL.slice(0, 4), wantedBy(['area', 'quay']))
  assert.deepEqual(states, [['to_do', 2], ['open', 1], ['corrected', 1], ['closed', 0], ['all', 2]].map(([value, n]) => ({ value, n })))
  assert.deepEqual(areas, [['', 3], ['quay', 2], ['yard', 1]].map(([value, n]) => ({ value, n })))
  assert.deepEqual(crews, [['', 2], ['Crew 2', 2], ['Crew 10', 0]].map(([value, n]) => ({ value, n })))
})

test('capitals and blanks make no other crew, and a name is offered once, in the order of its number', () => {
  assert.ok(sameCrew(' CREW  2', 'crew 2') && sameCrew(null, '') && !sameCrew('Crew 20', 'Crew 2'))
  assert.deepEqual(onceEach(['Crew 10', null, 'crew 2', '', 'Crew 2', undefined]), ['crew 2', 'Crew 10'])
})

test('a crew fixes what is open and has what waits for a recheck beside it', () => {
  const ids = ({ fix, recheck }) => [fix, recheck].map((list) => list.map(({ id }) => id).join(''))
  assert.deepEqual(ids(tasks(ALL, 'crew 2')), ['1', '2'])
  assert.deepEqual(ids(tasks(ALL, '')), ['4', ''])
  assert.deepEqual(crewsToday(ALL), [{ crew: 'Crew 2', n: 1 }, { crew: 'Crew 10', n: 1 }, { crew: '', n: 1 }])
  assert.deepEqual(crewsToday(ALL.filter((finding) => finding.state === 'closed')), [])
})

test('a tick is of the work that was open then: what was corrected and sent back is not ticked again', () => {
  const open = { id: '1', corrections: [] }
  const ticks = { 1: tickOf(open) }
  assert.equal(isTicked(ticks, open), true)
  assert.equal(isTicked(ticks, { ...open, corrections: [{}] }), false)
  assert.equal(isTicked({}, open), false)
})

test('the list asked for is shown where that crew has one, else the first', () => {
  const crews = crewsToday(ALL)
  assert.equal(chosenCrew(crews, undefined), 'Crew 2')
  assert.equal(chosenCrew(crews, 'CREW 10'), 'Crew 10')
  assert.equal(chosenCrew(crews, '-'), '')
  assert.equal(chosenCrew(crews, 'Crew 7'), 'Crew 2')
  assert.equal(chosenCrew([], 'Crew 7'), '')
})

test('one opened by hand stands where one walks to it, one of an area after its panels', () => {
  const at = (id, area, panel, ft, station = null) => [id, { id, station, area, panel, from_low_end: ft === null ? null : { value: ft, unit: 'ft' } }]
  const record = { areas: { a: { name: 'Wing' }, b: { name: 'Back slope' } }, stations: { s: { area: 'b', panel: 2, from_low_end: { value: '9.5', unit: 'ft' } } },
    findings: Object.fromEntries([at('job', null, null, null), at('area', 'b', null, null), at('hand', 'b', 2, '12'), at('near', 'b', 2, null), at('looked', 'b', 2, '9.5', 's'), at('wing', 'a', 1, '3')]) }
  assert.deepEqual(findingsInOrder(record).map(({ id }) => id), ['near', 'looked', 'hand', 'area', 'wing', 'job'])
})
