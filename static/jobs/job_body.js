// A job's entry said once more with other instruments or another acceptance. Pure.

/** What the fold adds to a body; everything else, known to this build or not, is said again as it was. */
const FOLDED = ['id', 'digest', 'by', 'at', 'clock', 'heads', 'instruments', 'acceptance']

/**
 * @param {any} job of the record @param {Record<string, {value: string, unit: string, source: string}>} stated by instrument: only what the job itself states
 * @param {string} acceptance `guarded`, `simple`, or '' for each rule's own
 */
export function jobBody(job, stated, acceptance) {
  const body = Object.fromEntries(Object.entries(job).filter(([name]) => !FOLDED.includes(name)))
  const instruments = Object.fromEntries(Object.entries(stated).map(([name, { value, unit, source }]) => [name, { uncertainty: { value, unit }, source: source.trim() }]))
  return { ...body, ...(Object.keys(instruments).length ? { instruments } : {}), ...(acceptance ? { acceptance } : {}) }
}

/** What the job itself states of its instruments, as a form holds it. @param {any} job of the record */
export function statedBy(job) {
  return Object.fromEntries(Object.entries(job.instruments).filter(([, one]) => /** @type {any} */ (one).own)
    .map(([name, one]) => [name, { .../** @type {any} */ (one).uncertainty, source: /** @type {any} */ (one).source }]))
}
