// The panels that a lot's draw has shown so far, for the plan: what is sealed is nobody's to see.

/** @param {any} record @param {string} area @returns {{lot: string, panel: number, state: string}[]} */
export function shownSample(record, area) {
  return Object.values(record.lots ?? {}).flatMap((/** @type {any} */ lot) => (lot.drawn ?? [])
    .filter((/** @type {any} */ one) => one.state !== 'sealed' && one.area === area)
    .map((/** @type {any} */ one) => ({ lot: lot.id, panel: one.panel, state: one.state })))
}
