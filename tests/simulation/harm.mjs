// What roofs, phones, browsers, networks and servers do meanwhile.

import { STATUSES } from './link.mjs'

const YEARS = 365.25 * 86_400_000

export const harm = {
  'kill page': ({ phone, tab }) => { phone.close(tab) },
  'load again': ({ phone, tab }) => { phone.open(tab) },
  'second tab': ({ phone }) => { phone.open(1) },
  freeze: async ({ world, phone, page, tab }) => {
    await world.clock.run({ tasks: 400, done: () => !phone.disk.busy(page) })
    if (!phone.disk.busy(page)) phone.freeze(tab)
  },
  thaw: ({ phone, tab }) => { phone.thaw(tab) },
  'kill browser': ({ phone }) => { phone.die() },
  'kill once told': async ({ world, phone }) => { // the very moment that somebody is told: saved
    const before = world.checker.told
    await world.clock.run({ tasks: 200, done: () => world.checker.told !== before })
    if (world.checker.told !== before) phone.die()
  },

  'good signal': ({ phone }) => { phone.link.state = 'good' },
  'poor signal': ({ phone }) => { phone.link.state = 'poor' },
  'no signal': ({ phone }) => { phone.link.state = 'none' },
  portal: ({ phone }) => { phone.link.state = 'portal' },
  wall: ({ phone, dice }) => { Object.assign(phone.link, { state: 'wall', status: STATUSES[dice.between(1, STATUSES.length - 1)] }) },

  'kill server': ({ world, dice }) => {
    if (dice.hits(0.3)) {
      world.server('kill')
      world.serverDied(dice.between(100, 60_000))
    } else {
      world.server('strike', { how: 'kill', after: dice.between(0, 25) })
    }
  },
  'server full': ({ world, dice }) => { world.server('strike', { how: 'full', after: dice.between(0, 10) }) },
  'server has room': ({ world }) => { world.server('strike', { how: null }) },
  'server backed up': ({ world }) => { world.server('back_up') },
  'server set back': ({ world }) => {
    for (const phone of Object.values(world.phones)) world.checker.look(phone)
    world.server('set_back')
    world.setBack = true
    world.checker.forgive('gone with the server')
  },
  'sign-ins end': ({ world }) => { world.server('expire') },
  revoke: ({ world, phone, dice }) => {
    const people = phone.disk.rows('people').filter(({ kid }) => kid)
    if (people.length) world.server('revoke', { kid: people[dice.between(0, people.length - 1)].kid })
  },

  'clock jumps': ({ phone, dice }) => {
    phone.wrong = dice.pick([[0, 2], [20 * YEARS, 1], [-20 * YEARS, 1], [dice.between(-86_400_000, 86_400_000), 2]])
  },
  'hours pass': ({ world, dice }) => { world.clock.sleep(dice.between(1, 30) * 3_600_000) },

  'disk full': ({ phone, dice }) => { phone.disk.free = dice.between(0, 40_000) },
  'room again': ({ phone }) => { phone.disk.free = Infinity },
  'storage dies': ({ phone, dice }) => {
    phone.disk.breakDown(Array.from({ length: dice.between(0, 3) }, () => (dice.hits(0.7) ? 'error' : 'silent')))
  },
  'a bit flips': ({ world, phone, dice }) => {
    // Not in a photo that is still being kept: of what nobody was told yet, nobody could say later whose fault it was.
    const told = new Set([...world.checker.tried.values()].map(({ sha256 }) => sha256))
    const rows = phone.disk.records('photo_chunks').filter(({ value }) => value.bytes?.byteLength && told.has(value.photo))
    if (!rows.length) return
    const row = rows[dice.between(0, rows.length - 1)]
    const bytes = new Uint8Array(row.value.bytes).slice()
    bytes[dice.between(0, bytes.length - 1)] ^= 1
    row.value = { ...row.value, bytes: bytes.buffer }
    for (const one of world.checker.tried.values()) if (one.sha256 === row.value.photo && one.life === phone.life) one.flipped = true
    world.checker.forgive('damaged')
  },
  'key lost': ({ phone }) => {
    const store = phone.disk.raw?.rawObjectStores.get('keys')
    for (const { key } of phone.disk.records('keys')) store.records.delete(key)
  },

  wipe: ({ world, phone }) => {
    world.checker.look(phone)
    world.checker.moved((one) => one.life === phone.life)
    phone.wipe()
    world.checker.forgive('wiped')
  },
  'back up': ({ world, phone }) => {
    phone.backup = { stores: phone.disk.copy(), cookies: [...phone.cookies], tried: new Set([...world.checker.tried.values()].filter(({ saved }) => saved)), life: phone.life }
  },
  'put back': ({ world, phone }) => {
    if (phone.backup?.life !== phone.life) return
    world.checker.look(phone)
    world.checker.moved((one) => one.life === phone.life && !phone.backup.tried.has(one))
    const { life } = phone
    phone.wipe(phone.backup.stores)
    Object.assign(phone, { life, cookies: new Map(phone.backup.cookies) })
    world.checker.forgive('put back')
  },
  clone: ({ world, phone }) => {
    if (!world.phones.c) world.add('c', { stores: phone.disk.copy(), cookies: [...phone.cookies] }).build = phone.build
  },

  update: ({ phone }) => {
    phone.build = 'next'
    phone.open(0)
  },
  downgrade: ({ phone }) => {
    phone.build = 'this'
    phone.open(0)
  },

  'sign in': ({ world, page, dice }) => { signIn(world, page, dice.pick([['ann', 2], ['ben', 1], ['cy', 1]])).catch(() => {}) },
  'change hands': ({ page, dice }) => { page.app.phonePeople().then((people) => people.length && page.app.unlock(people[dice.between(0, people.length - 1)].id, '')).catch(() => {}) },
  'sign out': ({ page }) => { page.app.signOut().catch(() => {}) },
}

/** With signal. @param {any} world @param {any} page @param {string} login */
export function signIn(world, page, login) {
  return page.app.signIn(login, world.password).then(() => page.app.enrol())
}
