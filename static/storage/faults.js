// Which storage faults mean that the connection is dead, so that reopening and replaying may help.

const CONNECTION = new Set(['InvalidStateError', 'UnknownError', 'AbortError', 'TimeoutError'])

/** Growing wait before each reopening, ms; as many tries as there are waits. */
export const REOPEN_WAITS = [50, 250, 1000]

/** @param {unknown} fault */
export function isConnectionFault(fault) {
  return fault instanceof Error && CONNECTION.has(fault.name)
}

/** @param {unknown} fault */
export function isDiskFull(fault) {
  return fault instanceof Error && fault.name === 'QuotaExceededError'
}

/** May a write that ended so have left the first half of a record on the disk? `seamwalk:torn` tells of it. @param {unknown} fault */
export function isHalfWritten(fault) {
  return fault instanceof Error && ['UnknownError', 'AbortError', 'QuotaExceededError'].includes(fault.name)
}
