// Shares as a form shows them, in a hundred, and as an entry keeps them. On decimal digits. Pure.

/** `10` in a hundred -> `0.1`, on decimal digits. @param {string} percent of plain decimal digits @returns {string} */
export function share(percent) {
  const [whole, fraction = ''] = percent.split('.')
  const digits = whole.padStart(3, '0')
  const text = `${digits.slice(0, -2)}.${digits.slice(-2)}${fraction}`
  return text.replace(/^0+(?=\d)/, '').replace(/\.?0+$/, '') || '0'
}

/** `0.1` -> `10` @param {string} text a decimal share @returns {string} */
export function hundredfold(text) {
  const [whole, fraction = ''] = text.split('.')
  const digits = whole + fraction.padEnd(2, '0').slice(0, 2)
  const rest = fraction.slice(2).replace(/0+$/, '')
  return (digits.replace(/^0+(?=\d)/, '') || '0') + (rest ? `.${rest}` : '')
}
