// Lines up the slope through outlines with openings, and one path for many of them. Pure, for the eye only.

/**
 * The pieces of roof on the line at `x`, lowest first; just beyond it where an edge lies on the line itself.
 * @param {number[][][]} rings the outline and its openings @param {number} x @returns {[number, number][]}
 */
export function chords(rings, x) {
  /** @type {number[]} */
  const crossed = []
  for (const points of rings) {
    let [ax, ay] = points[points.length - 1]
    for (const [bx, by] of points) {
      if ((ax <= x && bx > x) || (bx <= x && ax > x)) crossed.push(ay + ((x - ax) / (bx - ax)) * (by - ay))
      ax = bx
      ay = by
    }
  }
  crossed.sort((a, b) => a - b)
  return Array.from({ length: crossed.length >> 1 }, (_, i) => [crossed[2 * i], crossed[2 * i + 1]])
}

/**
 * Every seam of an area as one path.
 * @param {number[][][]} rings @param {number[]} xs of the lines @param {(x: number, y: number) => [number, number]} at where a point is drawn
 */
export function ribs(rings, xs, at) {
  let path = ''
  for (const x of xs) {
    for (const [low, high] of chords(rings, x)) {
      const [ax, ay] = at(x, low), [bx, by] = at(x, high)
      path += `M${short(ax)} ${short(ay)}L${short(bx)} ${short(by)}`
    }
  }
  return path
}

/** Outlines and openings as one path, to be filled even-odd. @param {number[][][]} rings @param {(x: number, y: number) => [number, number]} at */
export function rims(rings, at) {
  return rings.map((points) => 'M' + points.map(([x, y]) => at(x, y).map(short).join(' ')).join('L') + 'Z').join('')
}

/** @param {number} value */
function short(value) {
  return Math.round(value * 1000) / 1000
}
