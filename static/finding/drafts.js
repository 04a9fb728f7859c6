// Keys of what is begun and not signed yet, where two screens speak of the same.

/** @param {string} job @param {string} finding */
export function correctionKey(job, finding) {
  return `correction/${job}/${finding}`
}

/** Ticks on tomorrow's list: this phone's own, until the correction is kept. @param {string} job */
export function ticksKey(job) {
  return `ticks/${job}`
}
