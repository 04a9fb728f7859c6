// Whether an area's fit was checked, by whom, when, and what it came to at worst.

import { say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { MARKS } from './state.js'

/** @param {any} record @param {any} area @returns {{mark: string, text: string, result: string}} */
export function fitted(record, area) {
  const fit = record.fits?.[area.id]
  if (!fit) return { mark: '', text: say('fit.none'), result: '' }
  const mark = MARKS[fit.result] ?? MARKS.unsure
  const text = say('fit.recorded', { result: say(`result.${fit.result}`), name: fit.name, at: clock(fit.at) })
  return { mark, text: fit.heads.length > 1 ? `${text} ${say('fit.several', { n: fit.heads.length })}` : text, result: fit.result }
}
