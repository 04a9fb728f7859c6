// Whether the phone's storage takes what it is given, for the screen: told on `window` as `seamwalk:storage`.

/** @type {Map<string, string>} who was not served -> key of the words that say why */
const reasons = new Map()

/** @returns {string | null} key of the words for what is wrong with the storage just now */
export function storageTrouble() {
  return reasons.values().next().value ?? null
}

/** @param {string} who `database`, or `drafts` @param {string | null} reason */
export function noteStorage(who, reason) {
  const before = storageTrouble()
  if (reason) reasons.set(who, reason)
  else reasons.delete(who)
  if (storageTrouble() !== before) globalThis.dispatchEvent?.(new Event('seamwalk:storage'))
}
