// The short list of causes that a finding may be given: the definition's own, else the one common to all. Pure.

/**
 * Codes of the common list, in the order shown; their words are `cause.CODE`. Ours, no published source: told apart by who
 * can keep it from happening again (how it is set, with what, by what plan, on what, after what).
 */
export const COMMON = ['missing', 'wrong_part', 'wrong_place', 'tool_setting', 'metal_temperature', 'unclear_plan', 'under_it', 'delivered_so', 'hurry', 'damaged_since', 'not_shown']

/** @param {{causes?: {code: string, en: string, es: string}[]} | null | undefined} definition compiled @returns {{code: string, en?: string, es?: string}[]} */
export function causesOf(definition) {
  return definition?.causes?.length ? definition.causes : COMMON.map((code) => ({ code }))
}
