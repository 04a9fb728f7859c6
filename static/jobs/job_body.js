// A job's entry said once more with other instruments, another acceptance or other sampling. Pure.

/** What the fold adds to a body; everything else, known to this build or not, is said again as it was. */
const FOLDED = ['id', 'digest', 'by', 'at', 'clock', 'heads', 'instruments', 'acceptance', 'sampling']

/**
 * @param {any} job of the record @param {Record<string, {value: string, unit: string, source: string}>} stated by instrument: only what the job itself states
 * @param {string} acceptance `guarded`, `simple`, or '' for each rule's own
 * @param {Record<string, any>} sampling by name: only what the job itself states
 */
export function jobBody(job, stated, acceptance, sampling) {
  const body = Object.fromEntries(Object.entries(job).filter(([name]) => !FOLDED.includes(name)))
  const instruments = Object.fromEntries(Object.entries(stated).map(([name, { value, unit, source }]) => [name, { uncertainty: { value, unit }, source: source.trim() }]))
  return { ...body, ...(Object.keys(instruments).length ? { instruments } : {}), ...(acceptance ? { acceptance } : {}),
    ...(Object.keys(sampling).length ? { sampling } : {}) }
}

/** What the job itself states of its instruments, as a form holds it. @param {any} job of the record */
export function statedBy(job) {
  return Object.fromEntries(Object.entries(job.instruments).filter(([, one]) => /** @type {any} */ (one).own)
    .map(([name, one]) => [name, { .../** @type {any} */ (one).uncertainty, source: /** @type {any} */ (one).source }]))
}

/** What the job itself states of its sampling. @param {any} job of the record @returns {Record<string, any>} */
export function samplingOf(job) {
  const { own = [], ...all } = job.sampling ?? {}
  return Object.fromEntries(own.map((/** @type {string} */ name) => [name, all[name]]))
}
