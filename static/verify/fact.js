// One thing that the check found out: the twin of inspect_app/evidence/fact.py.

export const HOLDS = 'holds'
export const FAILS = 'fails'
export const UNKNOWN = 'not_determinable'

/**
 * `reason` is a code of the words `verify_page.reason.CODE` where it does not hold, `about` its facts.
 * @typedef {{name: string, status: string, reason: string | null, about: Record<string, any>}} Fact
 */

/** @param {string} name @param {Record<string, any>} [about] @returns {Fact} */
export const holds = (name, about = {}) => ({ name, status: HOLDS, reason: null, about })

/** @param {string} name @param {string} reason @param {Record<string, any>} [about] @returns {Fact} */
export const fails = (name, reason, about = {}) => ({ name, status: FAILS, reason, about })

/** @param {string} name @param {string} reason @param {Record<string, any>} [about] @returns {Fact} */
export const unknown = (name, reason, about = {}) => ({ name, status: UNKNOWN, reason, about })
