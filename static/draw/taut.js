// An outline pulled to its typed lengths, as chalk lines are: what is level stays level, what is plumb stays plumb,
// the first corner stays, and everything else moves as little as it can. Pure.

const CLOSE = 1e-9 // of the outline's size: no tape tells less
const ROUNDS = 60

/**
 * @param {number[][]} points @param {(number | null)[]} lengths of each edge, null where it gives way
 * @returns {number[][] | null} the corners; null where no outline has these lengths
 */
export function taut(points, lengths) {
  const size = Math.max(1e-9, ...points.flat().map(Math.abs), ...lengths.map((one) => one ?? 0))
  const rules = [...held(points, size), ...lengths.flatMap((long, i) => (long === null ? [] : [length(i, (i + 1) % points.length, long)]))]
  let at = points.flat()
  for (let round = 0; round < ROUNDS; round += 1) {
    const rows = rules.map((rule) => rule(at))
    if (rows.every((row) => Math.abs(row.off) < CLOSE * size)) return at.every(Number.isFinite) ? pairs(at) : null
    at = stepped(at, rows)
  }
  return null
}

/** @typedef {{off: number, by: [number, number][]}} Row how far a rule is off, and by which coordinate it changes */

/** @param {number[][]} points @param {number} size @returns {((at: number[]) => Row)[]} */
function held(points, size) {
  const keep = (/** @type {number} */ k) => (/** @type {number[]} */ at) => ({ off: at[k] - points.flat()[k], by: /** @type {[number, number][]} */ ([[k, 1]]) })
  const rules = [keep(0), keep(1)]
  points.forEach(([ax, ay], i) => {
    const j = (i + 1) % points.length
    for (const axis of [0, 1]) {
      const far = Math.abs(axis ? points[j][1] - ay : points[j][0] - ax)
      if (far < 1e-6 * size) rules.push((at) => ({ off: at[2 * j + axis] - at[2 * i + axis], by: [[2 * j + axis, 1], [2 * i + axis, -1]] }))
    }
  })
  return rules
}

/** @param {number} i @param {number} j @param {number} long @returns {(at: number[]) => Row} */
function length(i, j, long) {
  return (at) => {
    const dx = at[2 * j] - at[2 * i], dy = at[2 * j + 1] - at[2 * i + 1]
    const now = Math.hypot(dx, dy) || 1e-9
    return { off: now - long, by: [[2 * j, dx / now], [2 * j + 1, dy / now], [2 * i, -dx / now], [2 * i + 1, -dy / now]] }
  }
}

/** The least move that mends every row at once (Gauss-Newton, least norm). @param {number[]} at @param {Row[]} rows */
function stepped(at, rows) {
  const dense = rows.map((row) => {
    const line = new Array(at.length).fill(0)
    for (const [k, by] of row.by) line[k] += by
    return line
  })
  const product = dense.map((a, i) => dense.map((b, j) => a.reduce((sum, one, k) => sum + one * b[k], i === j ? 1e-12 : 0)))
  const pull = solved(product, rows.map((row) => -row.off))
  return at.map((one, k) => one + dense.reduce((sum, line, i) => sum + line[k] * pull[i], 0))
}

/** @param {number[][]} matrix symmetric @param {number[]} right @returns {number[]} (elimination with pivots) */
function solved(matrix, right) {
  const rows = matrix.map((row, i) => [...row, right[i]])
  const n = rows.length
  for (let c = 0; c < n; c += 1) {
    let best = c
    for (let r = c + 1; r < n; r += 1) if (Math.abs(rows[r][c]) > Math.abs(rows[best][c])) best = r
    ;[rows[c], rows[best]] = [rows[best], rows[c]]
    for (let r = 0; r < n; r += 1) {
      const share = r === c ? 0 : rows[r][c] / rows[c][c]
      if (share) for (let k = c; k <= n; k += 1) rows[r][k] -= share * rows[c][k]
    }
  }
  return rows.map((row, i) => row[n] / row[i])
}

/** @param {number[]} flat */
function pairs(flat) {
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]])
}
