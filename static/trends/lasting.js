// A time in words.

import { say } from '../words/say.js'

/** Hours up to two days, then days. @param {number} hours */
export function lasting(hours) {
  return hours < 48 ? say('trends.hours', { n: Math.round(hours) }) : say('trends.days', { n: Math.round(hours / 24) })
}
