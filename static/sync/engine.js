// Sending and receiving: rounds over stored rows. What is in memory here may vanish at any moment; the outbox is
// the only queue. Nothing is ever given up because of age or number of tries.
//
// A round starts: at start, when the page is seen again, when the browser says there is a network (a hint), after
// each save, every 30 s, when a person asks, and after a failed one by the delay list.

import { Trouble } from '../words/trouble.js'
import { layBallast } from '../storage/ballast.js'
import { isFull } from '../storage/room.js'
import { alone } from './lock.js'
import { DELAYS, waitFor } from './retry.js'
import { round } from './round.js'
import { status, tell } from './status.js'

export { status } from './status.js'

const TICK = 30_000
const AFTER_SAVE = 400 // ms, so that a burst of saves goes as one batch
const LAY_BALLAST = 20_000
const LOCKED_OUT = 1000
const AFTER_PEACE = 2000

let started = false
let failures = 0
/** @type {Promise<void> | null} */
let running = null
/** @type {'no' | 'yes' | 'asked'} a round wanted while one was running */
let again = 'no'
/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer

/** Start once per page; later calls change nothing. */
export function startSync() {
  if (started) return
  started = true
  const soon = (/** @type {number} */ wait) => {
    failures = 0
    plan(wait)
  }
  addEventListener('online', () => soon(0))
  addEventListener('pageshow', () => soon(0))
  document.addEventListener('resume', () => soon(0)) // a page that the browser had frozen
  addEventListener('seamwalk:kept', () => plan(AFTER_SAVE))
  addEventListener('seamwalk:peace', (event) => { peace = /** @type {CustomEvent} */ (event).detail })
  addEventListener('seamwalk:person', () => soon(AFTER_SAVE))
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && soon(0))
  setTimeout(() => isFull().then((full) => full || layBallast()).catch(() => {}), LAY_BALLAST)
  tell({})
  plan(0)
}

/** A person asked: one round now, refused items included. @returns {Promise<import('./status.js').Status>} after it */
export async function sendNow() {
  failures = 0
  const before = running
  await start('asked')
  if (before) await running // the round asked for follows the one that was under way
  return status()
}

/** @param {number} wait ms; an earlier plan stays */
function plan(wait) {
  const due = performance.now() + wait
  if (planned <= due && timer !== undefined) return
  clearTimeout(timer)
  planned = due
  timer = setTimeout(() => {
    timer = undefined
    if (peace) plan(AFTER_PEACE)
    else start('yes')
  }, wait)
}

let planned = Infinity
let peace = false // the next build of the app is about to take over: what goes by itself waits for it, a minute at most

/** @param {'yes' | 'asked'} why */
function start(why) {
  if (running) {
    if (again !== 'asked') again = why
    return running
  }
  running = run(why === 'asked').finally(() => {
    running = null
    const next = again
    again = 'no'
    if (next !== 'no') start(next)
  })
  return running
}

/** @param {boolean} asked */
async function run(asked) {
  /** @type {{trouble: any, moved: boolean}} */
  let result = { trouble: null, moved: false }
  try {
    const ran = await alone(async () => {
      result = await round(asked)
    })
    if (!ran) return plan(LOCKED_OUT) // another tab is at it, or is frozen: this one has seen nothing of the office
  } catch (fault) {
    result.trouble = fault instanceof Trouble ? fault : new Trouble('sync.unexpected', { value: String(fault) })
  }
  const { trouble, moved } = result
  failures = trouble ? (moved ? 1 : failures + 1) : 0
  await tell(trouble ? stuck(trouble) : { phase: 'idle', online: true, reason: null, facts: {}, message: null, wayOut: null,
    last: new Date().toISOString() })
  plan(failures ? waitFor(failures, DELAYS, Math.random()) : TICK)
}

/** @param {Trouble} trouble @returns {Partial<import('./status.js').Status>} */
function stuck(trouble) {
  const online = !['sync.offline', 'sync.not_our_server'].includes(trouble.code)
  return { phase: 'waiting', online, reason: trouble.code, facts: trouble.facts,
    message: trouble.fromServer ? trouble.message : null, wayOut: trouble.wayOut }
}
