// The day in one line for the home of a job: hold, stop or go, of the crew's front that waits most.

import { say } from '../words/say.js'
import { openLots, standing } from '../day/standing.js'

const WAITS = ['hold', 'stop', 'go', 'start']

/** @param {any} record @param {any} person @returns {{text: string, held: boolean}} */
export function frontOf(record, person) {
  const fronts = openLots(record, person).map((lot) => ({ lot, ...standing(record, lot) })).sort((a, b) => WAITS.indexOf(a.state) - WAITS.indexOf(b.state))
  const [first] = fronts
  if (!first) return { text: say('job.day.none'), held: false }
  const word = say(`day.${first.state}`, { panel: first.held?.panel ?? first.due?.panel ?? '' })
  return { text: first.lot.placed_to === null ? word : `${word} · ${say('day.set', { to: first.lot.placed_to })}`, held: first.state === 'hold' }
}
