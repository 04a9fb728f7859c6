// Which pictures belong to a place, or to one answer of a whole walk.

/**
 * Photos of a place by role, newest last. Of a whole walk each answer has its own: a coil tag does not show the
 * approval's page.
 * @param {any} record @param {any} walk @param {any} station @param {string} role @param {string} [subject] the answer's
 */
export function photosOf(record, walk, station, role, subject) {
  return Object.values(record.photos)
    .filter((/** @type {any} */ photo) => photo.walk === walk.id && photo.station === (station?.id ?? null) && photo.role === role
      && (station || photo.answer === subject))
    .sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1))
}

/** The newest photo of each role, by name. @param {any} record @param {any} walk @param {any} station @param {string} subject @returns {string[]} */
export function picturesOf(record, walk, station, subject) {
  return ['where', 'what'].flatMap((role) => photosOf(record, walk, station, role, subject).slice(-1)).map((/** @type {any} */ one) => one.sha256)
}
