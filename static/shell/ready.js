// "Ready for no signal" is proved, not assumed: the worker re-hashes every file it keeps and answers for the app
// without the network; the phone has a key, a job, every definition that the job pins, and, for whoever may plan a day
// on its roof, a ticket to draw by.

import { currentRow } from '../people/current.js'
import { privateKey } from '../people/device.js'
import { nextTicket } from '../outbox/ticket.js'
import { definition, jobRecord, jobs } from '../record/load.js'
import { askWorker, leftInPeace } from './worker.js'

export { capable } from './capable.js'

const GOOD_FOR = 60_000
const BAD_FOR = 3_000
const PLANNERS = ['foreman', 'inspector']

/** @type {{at: number, for: string, answer: Promise<Readiness>, ready: boolean} | null} */
let last = null

/** @typedef {{ready: boolean, reason: string | null, facts: Record<string, string | number>}} Readiness */

/**
 * Proved again at most every minute while ready, every 3 s while not.
 * @returns {Promise<Readiness>} `reason` is a words key for what is missing, with its facts
 */
export async function readiness() {
  const person = await currentRow()
  const who = `${person?.id} ${person?.kid}`
  const age = last ? performance.now() - last.at : Infinity
  if (last && last.for === who && (leftInPeace() || age < (last.ready ? GOOD_FOR : BAD_FOR))) return last.answer
  const mine = { at: performance.now(), for: who, ready: false, answer: prove(person) }
  last = mine
  mine.answer.then((answer) => { mine.ready = answer.ready }, () => {})
  return mine.answer
}

/** @param {any} person @returns {Promise<Readiness>} */
async function prove(person) {
  const shell = await askWorker('prove', navigator.serviceWorker?.controller ?? null)
  if (!shell || !shell.total) return coming()
  if (shell.missing.length || !shell.page) return no('shell.not_ready.files', { n: shell.missing.length, total: shell.total })
  if (!person) return no('shell.not_ready.person')
  if (!person.kid || !(await privateKey(person.id, person.kid))) return no('shell.not_ready.key')
  const known = await jobs()
  if (!known.length) return no('shell.not_ready.job')
  for (const { id, name } of known) {
    const { job, areas } = await jobRecord(id)
    if (!job) return no('shell.not_ready.record', { job: name })
    for (const [what, digest] of Object.entries(job.definitions ?? {})) {
      if (!(await definition(String(digest)))) return no('shell.not_ready.definition', { job: name, definition: what })
    }
    const plans = PLANNERS.includes(person.role) && Object.keys(areas).length > 0
    if (plans && !(await nextTicket(id, 'work'))) return no('shell.not_ready.tickets', { job: name })
  }
  return { ready: true, reason: null, facts: {} }
}

/** No whole app is here yet: how much longer it takes at the pace of now, where it is on its way. @returns {Promise<Readiness>} */
async function coming() {
  const found = await navigator.serviceWorker?.getRegistration()
  const { total, came, took } = (await askWorker('progress', found?.installing ?? null, 1000)) ?? { came: 0 }
  if (!came || came >= total) return no('shell.not_ready.app')
  return no('shell.not_ready.coming', { seconds: Math.ceil(((total - came) * took) / came / 1000), percent: Math.floor((100 * came) / total) })
}

/** @param {string} reason @param {Record<string, string | number>} [facts] */
function no(reason, facts = {}) {
  return { ready: false, reason, facts }
}
