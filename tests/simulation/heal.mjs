// The end of every run: signal, room, a server that stays up, keys that are good. Nothing is repaired by hand, and
// nobody taps for a while; then the app is asked to send, as often as a patient person would.

import { signIn } from './harm.mjs'

const BY_ITSELF = 40_000 // ms
const ROUNDS = 12

/** @param {any} world @param {boolean} anew whether the phones are started again, or go on as they stand */
export async function heal(world, anew) {
  world.server('strike', { how: null })
  world.up = true
  for (const phone of Object.values(world.phones)) {
    Object.assign(phone.disk, { free: Infinity, broken: [] })
    phone.link.state = 'good'
    if (anew) phone.die()
    if (phone.disk.raw?.version === 2 && phone.build === 'this') { // an older build only sends: the newer one comes again
      phone.build = 'next'
      phone.open(0)
    }
    for (const tab of [0, 1]) phone.thaw(tab)
    phone.page(0)
  }
  // A phone whose people have all signed out asks for a new token once an hour, and hears by it that the server was set back.
  if (Object.values(world.phones).some(({ disk }) => disk.rows('people').some(({ hidden }) => hidden))) world.clock.sleep(3_600_000)
  await world.clock.run({ ms: BY_ITSELF })
  for (const phone of Object.values(world.phones)) {
    await keysAgain(world, phone)
    for (let round = 0; round < ROUNDS && unsent(phone).length; round += 1) {
      await world.asked(phone.page(0), (app) => app.sendNow())
      await world.clock.run({ ms: 20_000 })
    }
  }
  const phones = Object.values(world.phones)
  // The others' part, twice round: who signed in only just now hears with the first that the server was set back, and
  // brings again what those before them have asked for in vain.
  for (const phone of [...phones, ...phones]) {
    await world.asked(phone.page(0), (app) => app.sendNow())
    await world.clock.run({ ms: 1000 })
    world.checker.look(phone)
  }
}

const unsent = (phone) => phone.disk.rows('outbox').filter(({ state }) => state !== 'held' && state !== 'damaged')

/** Everybody whose key is gone or ended signs in again. @param {any} world @param {any} phone */
async function keysAgain(world, phone) {
  const logins = Object.fromEntries(Object.entries(world.people).map(([login, id]) => [id, login]))
  const keys = new Set(phone.disk.records('keys').map(({ key }) => key.join()))
  const page = phone.page(0)
  for (const { id, kid, enrolment, revoked } of phone.disk.rows('people')) {
    if (enrolment && !revoked && keys.has(`${id},${kid}`)) continue
    const { fault } = await world.asked(page, () => signIn(world, page, logins[id]))
    if (fault) world.checker.fault(`no sign-in on ${phone.name} for ${logins[id]}: ${fault.code ?? fault} ${JSON.stringify(fault.facts ?? {})}`)
  }
}
