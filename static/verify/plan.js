// How many of a lot to look at, read again in the tables of MIL-STD-105E: the twin of inspect_app/rules/plan.py. The
// tables themselves come with the page, since a second copy would only be a second chance of a slip.

/** @typedef {[letter: string, sample: number, cells: string]} TableRow */
/** @typedef {{levels: string[], letters: [number | null, string][], aqls: string[], masters: Record<string, TableRow[]>}} Tables */

const SEVERITIES = ['critical', 'major', 'minor']

/** @param {number} lot @param {string} level @param {string} aql @param {string} inspection @param {Tables} tables */
export function plan(lot, level, aql, inspection, { levels, letters, aqls, masters }) {
  const row = letters.find(([most]) => most === null || lot <= most)
  const first = row?.[1][levels.indexOf(level)]
  const column = aqls.findIndex((one) => Number(one) === Number(aql))
  if (!first || column < 0 || !Object.hasOwn(masters, inspection)) throw new RangeError('no such plan')
  if (lot === 1) return { letter: first, n: 1, accept: 0, reject: 1 }
  let at = masters[inspection].findIndex(([letter]) => letter === first)
  for (;;) {
    const [letter, sample, cells] = masters[inspection][at]
    const cell = cells.split(' ')[column]
    if (cell === 'v') at += 1
    else if (cell === '^') at -= 1
    else {
      const [accept, reject = accept + 1] = cell.split('/').map(Number)
      return { letter, n: Math.min(sample, lot), accept, reject }
    }
  }
}

/**
 * Whether every plan that a lot states is what the tables give, and the number drawn the largest of them.
 * @param {Record<string, any>} body of the lot's entry @param {Tables} tables
 */
export function asComputed({ plans, size, inspection, n }, tables) {
  for (const [severity, stated] of Object.entries(plans)) {
    if (!SEVERITIES.includes(severity) || !stated?.level) continue
    const told = plan(size, stated.level, stated.aql, inspection, tables)
    if (['letter', 'n', 'accept', 'reject'].some((member) => stated[member] !== told[/** @type {'n'} */ (member)])) return false
  }
  const told = SEVERITIES.map((severity) => plans[severity]).filter(Boolean).map((one) => one.n)
  return told.length > 0 && n === Math.max(...told)
}
