// A panel that failed in two severities is one place on the roof: what is left to do there is said once.

/**
 * The worse of two of one panel: not bounded before bounded, then with fewer good panels found beside it.
 * @template {{panel: number, bounded: boolean, toward_start: number, toward_end: number}} F
 * @param {F[]} failed @returns {F[]} in their order
 */
export function onceEach(failed) {
  return failed.filter((one, at) => failed.every((other, place) => other.panel !== one.panel || place === at || before(one, other) < 0 || (before(one, other) === 0 && at < place)))
}

/** @param {{bounded: boolean, toward_start: number, toward_end: number}} one @param {{bounded: boolean, toward_start: number, toward_end: number}} other */
function before(one, other) {
  return Number(one.bounded) - Number(other.bounded) || one.toward_start + one.toward_end - (other.toward_start + other.toward_end)
}
