// Small lengths as a crew reads them off a tape, as the rulebook spelled them.

import { number } from '../words/number.js'

/** `1/8 in`; in decimals where no mark of a tape says it. @param {any} one `{text, unit}` with `value` or `exact` @returns {string} */
export function spoken(one) {
  if (one.text !== null) return `${one.text}\u00a0${one.unit}`
  return number(one.exact?.value ?? one.value, one.unit)
}
