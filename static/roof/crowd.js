// Marks on a roof, and on a small screen those of an area, stand closer than they are wide: a pass gives way, so that what is not a pass is never hidden.

/**
 * The marks to draw, what is not a pass last and so on top; a pass that would touch another kept mark is left out.
 * @template {{x: number, y: number, state: string}} M
 * @param {M[]} marks @param {number} near px between centres @returns {M[]}
 */
export function uncrowded(marks, near) {
  const told = marks.filter((one) => one.state !== 'pass')
  const kept = [...told]
  const passes = marks.filter((one) => {
    if (one.state !== 'pass' || kept.some((other) => Math.hypot(other.x - one.x, other.y - one.y) < near)) return false
    kept.push(one)
    return true
  })
  return [...passes, ...told]
}
