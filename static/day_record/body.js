// From what was pressed and typed to the body of a day's entry.

/**
 * @param {any} draft @param {any} person @param {string} statement what is signed, as it was shown
 * @param {boolean} idle whether it tells of a day without work
 */
export function dayBody(draft, person, statement, idle) {
  const own = {
    day: draft.day, crew: draft.crew.trim(), no_work: idle ? joined(draft.why ? [draft.why] : [], draft.why_words) : null,
    statement, name: person.name, role: person.role,
  }
  if (idle) {
    return { ...own, head_count: null, weather: draft.weather.map(weatherRow), work: '', materials: [], equipment: [], submittals: '', offsite: '',
      instructions: [], delays: [], safety: '', tied_down: joined(draft.tied, draft.tied_words), photos: draft.photos }
  }
  return {
    ...own, head_count: draft.head_count === null ? null : Math.round(Number(draft.head_count)), weather: draft.weather.map(weatherRow), work: draft.work.trim(),
    materials: draft.materials.map(materialRow), equipment: draft.equipment.map(trimmed), submittals: draft.submittals.trim(), offsite: draft.offsite.trim(),
    instructions: draft.instructions.map(trimmed).filter((/** @type {any} */ row) => row.said), delays: draft.delays.map(trimmed).filter((/** @type {any} */ row) => row.why),
    safety: joined(draft.safety, draft.safety_words), tied_down: joined(draft.tied, draft.tied_words), photos: draft.photos,
  }
}

/** Codes, then own words: `bundles; tarp on the hatch`. @param {string[]} codes @param {string} words */
export function joined(codes, words) {
  return [...codes, words.trim()].filter(Boolean).join('; ')
}

/** @param {any} row */
function weatherRow({ at, sky, wind, air, metal, metal_by }) {
  return { at, sky, wind, air, metal, metal_by: metal ? metal_by : undefined }
}

/** Fields of a label that nobody filled are not said. @param {any} row */
function materialRow(row) {
  const { what, quantity, accepted, stored, photos, gauge_system, gauge_other, coating_other, ...label } = trimmed(row)
  const told = Object.fromEntries(Object.entries(label).filter(([, value]) => value))
  return { what, quantity, accepted, stored, photos, ...told, ...(label.gauge ? { gauge_system: gauge_system || undefined } : {}) }
}

/** @param {any} row */
function trimmed(row) {
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [name, typeof value === 'string' ? value.trim() : value]))
}
