// The twin of inspect_app/entry/refusal.py: why something signed was not made or not taken.

/** `code` is a key of static/words/entry.json, `field` a path such as `payload.body.note`. */
export class Refused extends Error {
  /** @param {string} code @param {string} field @param {unknown} [value] */
  constructor(code, field, value) {
    super(`${code} ${field}`)
    this.name = 'Refused'
    this.code = code
    this.field = field
    this.value = shown(value)
  }
}

/** Short, safe text of any value: at most 120 characters. @param {unknown} value */
function shown(value) {
  if (value === undefined || value === null) return ''
  const text = typeof value === 'object' ? JSON.stringify(value) : String(value)
  const safe = text.slice(0, 121).replace(/\0|\p{Surrogate}/gu, '\ufffd')
  return safe.length > 120 ? `${safe.slice(0, 119)}…` : safe
}
