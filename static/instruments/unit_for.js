// The unit and the steps of a reading: the item's own where it says so.

const STEPS = /** @type {Record<string, number[]>} */ ({ in: [0.0625, 0.5], mm: [1, 10], '/12': [0.25, 1], deg: [0.5, 5], F: [1, 10], C: [1, 5] })
const THIN = /** @type {Record<string, number[]>} */ ({ in: [0.0001, 0.001], mm: [0.01, 0.1] })

/** @param {any} item compiled @param {any} record */
export function unitFor(item, record) {
  return item.unit?.[record.job.units] ?? (record.job.units === 'SI' ? 'mm' : 'in')
}

/** One press, and a larger one. @param {any} item compiled @param {any} record @param {string} unit @param {boolean} [thin] sheet metal @returns {number[]} */
export function stepsOf(item, record, unit, thin = false) {
  const own = Number(item.step?.[record.job.units])
  if (own > 0) return [own, Number((10 * own).toPrecision(12))]
  return (thin && THIN[unit]) || STEPS[unit] || [1]
}
