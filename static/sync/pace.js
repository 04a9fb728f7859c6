// How much goes in one request, by how long the last took: a cut costs what was under way, at most two seconds of it,
// so that signal for fifteen seconds at a time always moves something and little is sent twice. Pure.

const WANTED = 2000 // ms for one request

/**
 * The next size: doubled when the last request took less than half of what is wanted, halved when more or when it
 * failed. A request that carried less than it might, such as the end of a photo, makes none larger.
 * @param {number} size @param {number} carried at most `size`, or one thing that is larger
 * @param {number | null} took ms, or null when it failed @param {{least: number, most: number}} limits
 */
export function adapt(size, carried, took, { least, most }) {
  if (took === null || took > WANTED) return Math.max(least, size / 2)
  return took < WANTED / 2 && carried >= size ? Math.min(most, size * 2) : size
}
