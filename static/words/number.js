// The one number formatter of screen and report; inspect_app/report/number.py is its twin.
// Both work on decimal digits only, never on binary fractions: tests/vectors/numbers.json holds what both give.

const DECIMAL = /^([+-]?)([0-9]+)(?:\.([0-9]+))?(?:[eE]([+-]?[0-9]{1,3}))?$/
const LONGEST = 40
const MINUS = '−', GAP = '\u00a0', TIMES = '×', RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** @type {Record<string, [string, number]>} unit -> what is printed after the number, decimal places at most */
const UNITS = {
  in: [GAP + 'in', 3], ft: [GAP + 'ft', 2], mm: [GAP + 'mm', 1], cm: [GAP + 'cm', 2], m: [GAP + 'm', 3],
  F: [GAP + '°F', 1], C: [GAP + '°C', 1], dF: [GAP + '°F', 1], dC: [GAP + '°C', 1], K: [GAP + 'K', 1],
  '/F': ['/°F', 3], '/C': ['/°C', 3], '/K': ['/K', 3], '/12': [':12', 3], deg: ['°', 1], '%': [GAP + '%', 1],
  psf: [GAP + 'psf', 1], kPa: [GAP + 'kPa', 2], px: [GAP + 'px', 1],
  lbf: [GAP + 'lb', 0], N: [GAP + 'N', 0], kN: [GAP + 'kN', 2], psi: [GAP + 'psi', 0], ksi: [GAP + 'ksi', 1],
  MPa: [GAP + 'MPa', 1], 'lbf/in': [GAP + 'lb/in', 1], 'N/mm': [GAP + 'N/mm', 2], '': ['', 3],
}

/**
 * `value` (a decimal string or a number) with its unit: `number('40', 'ft')` is `40 ft`.
 * Without `places`: as many decimals as the unit is worth, zeros at the end dropped; with it: exactly so many.
 * A list is told one by one. What is no decimal is returned as it is, nothing as a dash.
 * @param {string | number | (string | number)[] | null | undefined} value @param {string} [unit] @param {number} [places]
 * @returns {string}
 */
export function number(value, unit = '', places) {
  if (Array.isArray(value)) return value.map((one) => number(one, unit, places)).join(', ') || '—'
  const [after, unitPlaces] = Object.hasOwn(UNITS, unit) ? UNITS[unit] : [GAP + unit, 3]
  if (value === null || value === undefined) return '—'
  const text = String(value)
  const found = text.length <= LONGEST ? DECIMAL.exec(text) : null
  if (!found) return text + after
  const fraction = found[3] ?? '', trim = places === undefined || places === null
  const most = trim ? unitPlaces : /** @type {number} */ (places)
  const digits = (found[2] + fraction).replace(/^0+/, '')
  const point = digits.length - fraction.length + Number(found[4] ?? 0)
  const sign = found[1] === '-' ? MINUS : ''
  if (unit === '/F' || unit === '/C' || unit === '/K') return scientific(sign, digits, point, most, trim) + after
  const [kept, at] = rounded(digits, point, most)
  return (/[1-9]/.test(kept) ? sign : '') + plain(kept, at, most, trim) + after
}

/** @param {string} digits @param {number} point @param {number} places @returns {[string, number]} */
function rounded(digits, point, places) {
  const keep = point + places
  if (keep >= digits.length) return [digits, point]
  if (keep < 0) return ['', point]
  const kept = digits.slice(0, keep)
  if (digits[keep] < '5') return [kept, point]
  const raised = String(BigInt(kept || '0') + 1n).padStart(kept.length, '0')
  return [raised, point + raised.length - kept.length]
}

/** @param {string} digits @param {number} point @param {number} places @param {boolean} trim */
function plain(digits, point, places, trim) {
  if (point <= 0) {
    digits = '0'.repeat(1 - point) + digits
    point = 1
  }
  digits = digits.padEnd(point, '0')
  const whole = digits.slice(0, point).replace(/^0+/, '') || '0'
  let fraction = digits.slice(point, point + places)
  fraction = trim ? fraction.replace(/0+$/, '') : fraction.padEnd(places, '0')
  return whole + (fraction ? `.${fraction}` : '')
}

/** @param {string} sign @param {string} digits @param {number} point @param {number} places @param {boolean} trim */
function scientific(sign, digits, point, places, trim) {
  if (!digits) return '0'
  const [kept, at] = rounded(digits, 1, places)
  const exponent = point - 1 + (at - 1)
  const text = sign + plain(kept, 1, places, trim)
  if (exponent === 0) return text
  return `${text}${GAP}${TIMES}${GAP}10${[...String(exponent)].map((d) => (d === '-' ? '⁻' : RAISED[Number(d)])).join('')}`
}
