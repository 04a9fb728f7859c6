// Which panels of an area stand, by what was recorded. Pure.

const NOT_THERE = ['to_come', 'no_seam']

/** The panels placed on an area, as few stretches as there are. @param {any} coverage of one area @returns {{from: number, to: number}[]} */
export function stretches(coverage) {
  /** @type {{from: number, to: number}[]} */
  const found = []
  for (const { from, to, state } of coverage?.runs ?? []) {
    if (NOT_THERE.includes(state)) continue
    const last = found.at(-1)
    if (last && last.to + 1 === from) last.to = to
    else found.push({ from, to })
  }
  return found
}

/** Whether a panel's leg is hidden by what was recorded: the next panel stands too. @param {any} coverage of its area @param {number} panel */
export function legHidden(coverage, panel) {
  return stretches(coverage).some(({ from, to }) => from <= panel && panel < to)
}
