// A verdict as an entry carries it: no floats, every number decimal text.

/** Plain decimal text of a number, all its digits, never an exponent. @param {number} number */
export function digits(number) {
  const text = String(number)
  const found = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text)
  if (!found) return text
  const [, sign, head, tail = '', power] = found
  const shift = Number(power)
  const all = head + tail
  if (shift < 0) return `${sign}0.${'0'.repeat(-shift - 1)}${all}`
  return sign + all.padEnd(shift + 1, '0')
}

/** @param {any} value @returns {any} the same with every number that is no integer as text */
export function textual(value) {
  if (typeof value === 'number') return Number.isSafeInteger(value) ? value : digits(value)
  if (Array.isArray(value)) return value.map(textual)
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, textual(one)]))
}

/** What a rule answers with: a number, a word that stays, or a list of numbers. @param {any} value @param {(number: any) => any} change */
function each(value, change) {
  if (Array.isArray(value)) return value.map(change)
  return Number.isNaN(Number(value)) ? value : change(value)
}

/** What a person judged. @param {string} choice */
export function judged(choice) {
  return { result: choice, rule: null, rulebook: '', reason: null, inputs: {}, values: {} }
}

/** What was only written down: nothing to pass or fail. */
export function noted() {
  return { result: 'not_applicable', rule: null, rulebook: '', reason: { code: 'recorded', facts: {} }, inputs: {}, values: {} }
}

/** What the rulebook answered. @param {any} answer @param {string} rulebook digest of its files */
export function computed(answer, rulebook) {
  const values = Object.entries(answer.values ?? {}).map(([name, one]) =>
    [name, { ...(/** @type {any} */ (one)), value: each((/** @type {any} */ (one).value), (number) => digits(Number(number))) }])
  return { result: answer.verdict ?? 'not_applicable', rule: answer.rule, rulebook, reason: textual(answer.reason ?? null),
    inputs: textual(answer.inputs ?? {}), values: Object.fromEntries(values) }
}

/** A verdict as it was recorded, shown again as the rulebook gave it then. @param {any} verdict of an answer */
export function recorded({ result, rule, reason, inputs, values }) {
  const numbers = Object.fromEntries(Object.entries(values ?? {}).map(([name, one]) => [name, { ...(/** @type {any} */ (one)), value: each((/** @type {any} */ (one).value), Number) }]))
  const [free, ridge] = [numbers.offset?.value, numbers.toward_ridge?.value] // of opposite signs where the free end is the eave
  return { rule, verdict: result === 'not_applicable' ? null : result, reason, inputs: inputs ?? {}, values: numbers, understood: { free_end: free * ridge < 0 ? 'eave' : 'ridge' } }
}

/**
 * Decimals of a rule's numbers: sheet metal one finer than the rest, as the gauge tables are, a slope's angles to a
 * hundredth; undefined for the usual. The report's are in `pages/working.py`.
 * @param {string} rule @param {string} unit @returns {number | undefined}
 */
export function places(rule, unit) {
  if (/^slope@/.test(rule) && unit === 'deg') return 2
  return /^thickness@/.test(rule) ? /** @type {Record<string, number>} */ ({ in: 4, mm: 3 })[unit] : undefined
}
