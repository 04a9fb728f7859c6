// How strongly the first picture lies over the live one, in hundredths. Pure.

export const STEPS = [0, 35, 50, 65, 80]

/** The next step below; the lowest stays. @param {number} share */
export function fainter(share) {
  return [...STEPS].reverse().find((one) => one < share) ?? STEPS[0]
}

/** The next step above; the highest stays. @param {number} share */
export function stronger(share) {
  return STEPS.find((one) => one > share) ?? /** @type {number} */ (STEPS.at(-1))
}
