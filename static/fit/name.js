// What a line is called, and what is to be got where it stands open.

import { known, say } from '../words/say.js'
import { zoneName } from '../roof/names.js'

/** @param {string} line as `slope_found` or `zone:edge` */
export function lineName(line) {
  const [kind, ...zone] = line.split(':')
  return kind === 'zone' ? say('fit.line.zone', { zone: zoneName(zone.join(':')) }) : say(`fit.line.${kind}`)
}

/** @param {any} answer of one line @returns {string} empty where nothing is to be got */
export function toGet(answer) {
  const key = `fit.get.${answer.get}`
  return answer.get && known(key) ? say(key) : ''
}
