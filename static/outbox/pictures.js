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

/**
 * The photo's row, where the office has not confirmed it and it does not wait already. One that somebody else took on this
 * phone, and whose entry is signed by whoever holds it since, becomes theirs too: else it would never go out.
 * @param {any} tx @param {any} entry @param {string} sha256
 */
export async function unsentPhoto(tx, { person, job }, sha256) {
  const confirmed = await tx.objectStore('receipts').getKey([person, 'photo', job, sha256])
  const waiting = await tx.objectStore('outbox').getKey([person, 'photo', job, sha256])
  if (confirmed || waiting) return undefined
  const own = await tx.objectStore('photos').get([person, sha256])
  if (own) return own
  const keys = await tx.objectStore('photos').getAllKeys()
  const key = keys.find((/** @type {string[]} */ [, name]) => name === sha256)
  if (!key) return undefined
  const taken = await tx.objectStore('photos').get(key)
  if (taken.fetched) return undefined // it came from the office
  await tx.objectStore('photos').put({ ...taken, person })
  return taken
}
