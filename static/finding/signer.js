// Who said something of a finding: the job's own word for whoever signed, before any name that the entry gives itself.

/**
 * @param {Record<string, string>} names person id -> name, as this phone knows the job's people
 * @param {any} said an entry of the finding, or a step of its history
 * @returns {string} empty where nobody told
 */
export function signer(names, said) {
  return names[said?.by] ?? said?.name ?? ''
}
