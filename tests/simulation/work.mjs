// What people do with the app: keep an area, change it, take a photo, note a draft, send.

const Q = (value, unit) => ({ value, unit })
const WALK = '01a00000-0000-7000-8000-00000000000b'

/** @param {any} world @param {any} page @param {any} one as tried @param {string[]} replaces */
function keepArea(world, page, one, replaces) {
  const body = { name: one.name, assembly: '01a00000-0000-7000-8000-00000000000a', slope: Q('4', '/12'), start: 'left',
    outline: { unit: 'ft', points: [['0', '0'], ['1', '0'], ['1', '1'], ['0', '1']] },
    edges: ['eave', 'rake', 'ridge', 'rake'], coverage: Q('16', 'in'), fixed_line: null, zones: ['field'] }
  return page.app.keepEntry({ job: world.job, kind: 'area', subject: one.subject, body, replaces, draft: one.draft })
}

/** The person is told only on a page that is still there. @param {any} world @param {any} page @param {any} one @param {Promise<any>} kept */
function told(world, page, one, kept) {
  kept.then(({ digest }) => page.dead || world.checker.saved(one, digest), (fault) => world.count(`refused: ${fault.code ?? fault.name}`))
}

const subject = (name) => `01a00000-0000-7000-8000-${Buffer.from(name).toString('hex').slice(0, 12).padStart(12, '0')}`

export const work = {
  save({ world, phone, page }) {
    const one = world.checker.trying(phone, { kind: 'area' })
    one.subject = subject(one.name)
    told(world, page, one, keepArea(world, page, one, []))
  },

  /** Say something kept earlier again, differently. */
  correct({ world, phone, page, dice }) {
    const known = [...world.checker.tried.values()].filter((one) => one.kind === 'area' && one.digest && one.life === phone.life)
    if (!known.length) return
    const old = known[dice.between(0, known.length - 1)]
    const one = world.checker.trying(phone, { kind: 'area', subject: old.subject })
    told(world, page, one, keepArea(world, page, one, [old.digest]))
  },

  /** Take a photo: its bytes first, then the entry that names it, as every screen does. */
  photo({ world, phone, page, dice }) {
    const one = world.checker.trying(phone, { kind: 'photo' })
    const size = dice.pick([[1, 1], [4095, 1], [4096, 1], [4097, 1], [dice.between(1, 3000), 4], [dice.between(4000, 30_000), 8]])
    const bytes = dice.fill(new Uint8Array(size))
    bytes.set(Buffer.from(`\xff\xd8${one.name} ${world.seed}`, 'latin1').subarray(0, size))
    const file = { name: 'picture.jpg', type: 'image/jpeg', size, arrayBuffer: async () => bytes.slice().buffer }
    const kept = page.app.keepPhoto(file).then((photo) => {
      if (page.dead) throw new Error('the page is gone')
      Object.assign(one, { sha256: photo.sha256, photoKept: true })
      return page.app.keepEntry({ job: world.job, kind: 'photo', subject: photo.sha256, body: { walk: WALK, station: null, answer: null,
        role: 'other', source: 'picked', name: one.name, ...photo } })
    })
    told(world, page, one, kept)
  },

  /** Go on with a draft, one of each tab. */
  draft({ phone, page, tab }) {
    const key = `draft of tab ${tab}`
    const value = (phone.drafts += 1)
    const { person } = phone.disk.records('meta').find(({ key: name }) => name[0] === 'current').value
    page.app.saveDraft(person, key, value).then(() => page.dead || phone.noted.set(`${person} ${key}`, value), () => {})
  },

  send({ page }) {
    page.app.sendNow()
  },

  /** Somebody looks: what is counted, the list, the people. Reading must never stand in the way. */
  look({ page }) {
    Promise.all([page.app.counts(), page.app.outboxItems(), page.app.phonePeople()]).catch(() => {})
  },

  'send again'({ page }) {
    page.app.outboxItems().then((items) => items.filter(({ state }) => state === 'refused').map(page.app.sendAgain)).catch(() => {})
  },
}
