// Runs of the seeds given, or of the stories: simulate.mjs FIRST COUNT PLANTED PATIENCE VERBOSE STORIES, the planted bugs and the
// stories as JSON, the patience for shortening in ms. Everything told goes to the process that
// started this one; so does every request.

import fc from 'fast-check'
import { builds } from './build.mjs'
import { signIn } from './harm.mjs'
import { heal } from './heal.mjs'
import { ask } from './server.mjs'
import { story, take } from './story.mjs'
import { World, totals } from './world.mjs'

process.env.TZ = 'America/Chicago'
const BEGUN = 60_000 // ms: by then the first sign-ins are long over
/** @type {string[]} */
const loose = []
process.on('unhandledRejection', (fault) => {
  if (fault instanceof TypeError || fault instanceof ReferenceError) loose.push(String(fault.stack))
})

const [first, count, planted = '[]', patience = '60000', verbose = '', stories = '[]'] = process.argv.slice(2)
const made = await builds(JSON.parse(planted))
const beginning = await begin()
for (let seed = Number(first); seed < Number(first) + Number(count); seed += 1) {
  await simulate(seed)
  if (planted !== '[]' && totals.failures) break // found: that is all we wanted to know
}
for (const told of JSON.parse(stories)) await again(told)
ask({ op: 'done', totals })

/** Two phones, their people signed in: what every run begins with. */
async function begin() {
  const world = new World(made, { seed: 1, locks: true })
  for (const [name, login] of [['a', 'ann'], ['b', 'ben']]) {
    const page = world.add(name).open(0)
    const { fault } = await world.asked(page, () => signIn(world, page, login))
    if (fault) throw fault
    const { value } = await world.asked(page, (app) => app.sendNow())
    if (value.reason) throw new Error(JSON.stringify(value))
    world.phones[name].close(0)
  }
  world.server('mark')
  if (world.clock.now > BEGUN) throw new Error(`the first sign-ins took ${world.clock.now} ms`)
  return Object.entries(world.phones).map(([name, phone]) => [name, { stores: phone.disk.copy(), cookies: [...phone.cookies] }])
}

/** @param {number} seed */
async function simulate(seed) {
  let last = Promise.resolve()
  const property = fc.asyncProperty(story, (told) => (last = live(seed, told)))
  const outcome = await fc.check(property, { seed, numRuns: 1, endOnFailure: patience === '0', interruptAfterTimeLimit: Number(patience) || 60_000, markInterruptAsFailure: false })
  await last.catch(() => {}) // out of patience, the shortening leaves its last try under way: the next seed would share its server
  totals.seeds = (totals.seeds ?? 0) + 1
  if (!outcome.failed) return
  totals.failures = (totals.failures ?? 0) + 1
  ask({ op: 'failed', seed, story: outcome.counterexample?.[0] ?? null, why: String(outcome.errorInstance?.stack ?? outcome.error) })
}

/** A story that is known. @param {any} told */
async function again(told) {
  totals.seeds = (totals.seeds ?? 0) + 1
  try {
    await live(0, told)
  } catch (fault) {
    ask({ op: 'failed', seed: 0, story: told, why: String(/** @type {any} */ (fault).stack) })
  }
}

/** @param {number} seed @param {any} told */
async function live(seed, { locks, anew, steps }) {
  const world = new World(made, { seed, locks, now: BEGUN })
  loose.length = 0
  for (const [name, from] of beginning) world.add(name, from)
  for (const step of steps) {
    if (verbose) ask({ op: 'say', text: `${Math.round(world.clock.now)} ${JSON.stringify(step)}` })
    await take(world, step)
    if (world.checker.faults.length) break
  }
  if (!world.checker.faults.length) {
    await heal(world, anew)
    world.checker.end(world.server('census'))
  }
  world.count('tasks', world.clock.done)
  const faults = [...world.checker.faults, ...loose]
  if (faults.length) throw new Error(faults.join('\n'))
}
