// Distances one after another, as they are typed or dictated: `11.5 12 1/4 12,5`. What is not understood is named. Pure.

const SIGNS = /** @type {Record<string, string>} */ ({ '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' })
const UNITS = /** @type {Record<string, RegExp>} */ ({ in: /^(?:in|inch|inches|pulgadas?)\.?$/i, mm: /^(?:mm|mil[ií]metros?|millimet(?:er|re)s?)\.?$/i })
const AND = /^(?:and|y)$/i
const MILLIONTHS = 1e6

/**
 * @param {string} text @param {string} unit `in` or `mm` @param {number} most the longest that is taken
 * @returns {{values: string[], wrong: string[]}} decimal texts in the order typed, and what was not understood
 */
export function distances(text, unit, most) {
  const plain = text.replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${SIGNS[sign]}`).replace(/["″”]|''/g, ' in ').replace(/([0-9])([a-zí]+)/gi, '$1 $2')
  const values = /** @type {string[]} */ ([])
  const wrong = /** @type {string[]} */ ([])
  // A comma or a semicolon before a space, and a new line, part two distances; a comma within figures is a decimal one.
  for (const group of plain.split(/[;\n]|,(?=\s|$)/)) {
    let open = -1 // where a whole number waits for its fraction
    for (const word of group.split(/\s+/).filter(Boolean)) {
      const read = figure(word)
      const part = fraction(word)
      if (UNITS[unit]?.test(word)) open = -1
      else if (part && open >= 0) { values[open] = mixed(values[open], part); open = -1 }
      else if (part) values.push(mixed('0', part))
      else if (read !== null) { values.push(read); open = /^\d+$/.test(read) ? values.length - 1 : -1 }
      else if (!AND.test(word)) { wrong.push(word); open = -1 }
    }
  }
  const outside = (/** @type {string} */ value) => !(Number(value) > 0 && Number(value) <= most)
  return { values, wrong: [...wrong, ...values.filter(outside)] }
}

/** A plain decimal. `12,25` is not taken: it may be two distances, and one of them too long. @param {string} word */
function figure(word) {
  const found = /^(\d{1,5})(?:\.(\d{0,6})|,(\d))?$/.exec(word)
  if (!found) return /^\d{1,5}-\d+\/\d+$/.test(word) ? dashed(word) : null
  const tail = (found[2] ?? found[3] ?? '').replace(/0+$/, '')
  return `${Number(found[1])}${tail && '.' + tail}`
}

/** `12-1/4` @param {string} word */
function dashed(word) {
  const [whole, part] = word.split('-')
  const read = fraction(part)
  return read ? mixed(whole, read) : null
}

/** Proper, of the divisions of a tape: exact in six decimals. @param {string} word @returns {[number, number] | null} */
function fraction(word) {
  const found = /^(\d{1,2})\/(2|4|8|16|32|64)$/.exec(word)
  const [above, below] = found ? [Number(found[1]), Number(found[2])] : [0, 1]
  return above > 0 && above < below ? [above, below] : null
}

/** @param {string} whole @param {[number, number]} part */
function mixed(whole, [above, below]) {
  const tail = String(above * MILLIONTHS / below).padStart(6, '0').replace(/0+$/, '')
  return `${Number(whole)}.${tail}`
}
