// Where a dragged corner comes to rest: level or plumb with another corner if near, else on the tape's plain marks. Pure.

const GRAIN = /** @type {Record<string, number>} */ ({ ft: 0.5, m: 0.1, in: 6, cm: 10, mm: 100 })

/** @param {number[]} at @param {number[][]} others corners to line up with @param {string} unit @param {number} near how near is near @returns {number[]} */
export function snapped(at, others, unit, near) {
  const grain = GRAIN[unit] ?? 1
  return at.map((value, axis) => {
    const line = others.map((one) => one[axis]).sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0]
    return line !== undefined && Math.abs(line - value) < near ? line : Math.round(value / grain) * grain
  })
}
