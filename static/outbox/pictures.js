// Pictures that an entry names, which go with it.

const theirs = (/** @type {any} */ { photos }) => photos
const document = (/** @type {any} */ { document }) => (document ? [document] : [])

/** By kind. @type {Record<string, (body: any) => string[]>} */
const PICTURES = {
  photo: ({ sha256 }) => [sha256], disposition: document, concession: document,
  finding: theirs, correction: theirs, recheck: theirs, reopening: theirs,
  day: ({ photos, materials }) => [...photos, ...materials.flatMap(theirs)],
  survey: ({ photos, substitutions, samples, wear }) => [...photos, ...substitutions.flatMap(document), ...samples.flatMap(theirs), ...(wear?.photos ?? [])],
}

/** @param {any} payload @returns {string[]} sha256 each */
export function picturesOf({ kind, body }) {
  return [...new Set(PICTURES[kind]?.(body) ?? [])]
}

/** The photo's row, where the office has not confirmed it and it does not wait already. @param {any} tx @param {any} entry @param {string} sha256 */
export async function unsentPhoto(tx, { person, job }, sha256) {
  const confirmed = await tx.objectStore('receipts').getKey([person, 'photo', job, sha256])
  const waiting = await tx.objectStore('outbox').getKey([person, 'photo', job, sha256])
  return confirmed || waiting ? undefined : tx.objectStore('photos').get([person, sha256])
}
