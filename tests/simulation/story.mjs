// Stories: lists of steps, each of which knows its own chance, so that what is left of a shortened one stays as it was.

import fc from 'fast-check'
import { Dice } from './dice.mjs'
import { harm } from './harm.mjs'
import { work } from './work.mjs'

const RULES = { ...work, ...harm }
const OFTEN = { save: 16, photo: 16, correct: 6, send: 10, look: 2, draft: 3, wall: 2, 'good signal': 4, 'poor signal': 4, 'kill browser': 3, 'kill once told': 4, 'kill page': 3, 'kill server': 3 }
const ON_A_PAGE = new Set([...Object.keys(work), 'freeze', 'sign in', 'change hands', 'sign out'])

const NEEDS_SOMEBODY = new Set(['save', 'correct', 'photo', 'draft'])

/** What follows a step: so many tasks, or so many ms. */
const run = fc.oneof({ weight: 3, arbitrary: fc.record({ tasks: fc.nat(60) }) }, { weight: 1, arbitrary: fc.record({ tasks: fc.nat(600) }) },
  { weight: 2, arbitrary: fc.record({ ms: fc.constantFrom(50, 500, 3000, 35_000) }) })

const step = fc.record({
  rule: fc.oneof(...Object.keys(RULES).map((name) => ({ weight: OFTEN[name] ?? 1, arbitrary: fc.constant(name) }))),
  on: fc.constantFrom('a', 'a', 'b', 'c'), tab: fc.constantFrom(0, 0, 0, 1), dice: fc.nat(1_000_000), run,
})

export const story = fc.noBias(fc.record({
  locks: fc.boolean(), anew: fc.boolean(), steps: fc.array(step, { maxLength: 60, size: 'max' }),
}))

/** @param {any} world @param {any} step */
export async function take(world, { rule, on, tab, dice: seed, run: after }) {
  const phone = world.phones[on] ?? world.phones.a
  const dice = new Dice(seed)
  phone.dice.state ^= seed // what the phone meets next hangs on this step too
  const page = ON_A_PAGE.has(rule) ? phone.page(tab) : phone.pages[tab]
  const nobody = NEEDS_SOMEBODY.has(rule) && !phone.disk.records('meta').some(({ key, value }) => key[0] === 'current' && value && !value.locked)
  if (nobody) rule = 'sign in' // a screen without a person offers nothing else
  if (!page?.frozen || rule === 'thaw' || !ON_A_PAGE.has(rule)) {
    world.count('steps')
    world.count(`rule: ${rule}`)
    await world.clock.as(page ?? phone.disk.process, () => RULES[rule]({ world, phone, page, tab, dice }))
  }
  await world.clock.run(after)
  world.checker.look(phone)
}
