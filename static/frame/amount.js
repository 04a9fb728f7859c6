// Amounts as a person types, steps and reads them: decimal text with a unit, never a float in an entry.

import { say } from '../words/say.js'

/** `12,50` -> `12.5`; null for what is no plain decimal. @param {string} text @returns {string | null} */
export function decimal(text) {
  const found = /^([-−+]?)(\d{0,9})(?:[.,](\d{0,6}))?$/.exec(text.trim())
  if (!found || (!found[2] && !found[3])) return null
  const [, sign, left, right = ''] = found
  const digits = `${left.replace(/^0+(?=\d)/, '') || '0'}${right.replace(/0+$/, '') ? '.' + right.replace(/0+$/, '') : ''}`
  return sign && sign !== '+' && digits !== '0' ? `-${digits}` : digits
}

/** One step up or down, without the noise of binary fractions. @param {string} value @param {number} by */
export function step(value, by) {
  const places = Math.max(...[value, String(by)].map((one) => (one.split('.')[1] ?? '').length))
  const scale = 10 ** places
  const units = Math.round((Number(value) || 0) * scale) + Math.round(by * scale)
  return decimal(trimmed(units, places)) ?? '0'
}

/** A step as it stands on a tape: `1/16` of an inch, `0.001` where no mark is. @param {number} amount @param {string} [unit] */
export function mark(amount, unit) {
  const below = [2, 4, 8, 16, 32].find((one) => Number.isInteger(amount * one))
  return unit === 'in' && amount < 1 && below ? `${amount * below}/${below}` : String(amount)
}

/** @param {number} units @param {number} places */
function trimmed(units, places) {
  const digits = String(Math.abs(units)).padStart(places + 1, '0')
  const cut = digits.length - places
  return `${units < 0 ? '-' : ''}${digits.slice(0, cut)}${places ? '.' + digits.slice(cut) : ''}`
}

export const METRES = /** @type {Record<string, number>} */ ({ in: 0.0254, ft: 0.3048, mm: 0.001, cm: 0.01, m: 1 })

/** For drawing only; nothing judged or printed comes from here. @param {any} quantity @returns {number | null} */
export function metres(quantity) {
  if (!quantity || !(quantity.unit in METRES)) return null
  return Number(quantity.value) * METRES[quantity.unit]
}

/** `metres`, in another unit, for drawing. @param {any} quantity @param {string} unit */
export function drawn(quantity, unit) {
  const length = metres(quantity)
  return length === null ? null : length / METRES[unit]
}

const SHOWN = /** @type {Record<string, string>} */ ({ F: '°F', C: '°C', dF: '°F', dC: '°C', K: 'K', deg: '°', '%': '%', '/F': '/ °F', '/C': '/ °C', '/K': '/ K' })

/** A recorded quantity as it was entered: nothing rounded. @param {any} quantity */
export function shown(quantity) {
  if (!quantity) return '—'
  const unit = quantity.unit === '/12' ? say('area.slope.unit') : SHOWN[quantity.unit] ?? quantity.unit
  const value = String(quantity.value).replace(/^-/, '−')
  return unit === '°' || unit === '%' ? value + unit : `${value}\u00a0${unit}`
}

/** @param {string} value @param {string} unit */
export function quantity(value, unit) {
  return { value, unit }
}

/** The job's units for a kind of amount. @param {any} job @param {'far'|'near'|'heat'} kind */
export function unitOf(job, kind) {
  const metric = job?.units === 'SI'
  return { far: metric ? 'm' : 'ft', near: metric ? 'mm' : 'in', heat: metric ? 'C' : 'F' }[kind]
}
