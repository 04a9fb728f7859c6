// The set checker: what was tried, what was told to be saved, what a receipt was held for, and what is there at the end.
// `lost` and `unexpected` must be nothing; what nobody was told of and is there all the same is `recovered`.

import { createHash } from 'node:crypto'

const sha256 = (bytes, as) => createHash('sha256').update(bytes).digest(as)

export class Checker {
  /** Everything that was ever tried, by its name. @type {Map<string, any>} */
  tried = new Map()
  /** What a phone has held a receipt for, `entry DIGEST` or `photo SHA256`. @type {Set<string>} */
  received = new Set()
  /** What is on no disk any more, named as in `received`. @type {Set<string>} */
  gone = new Set()
  /** Whom each key was made for, by its name. @type {Map<string, string>} */
  made = new Map()
  /** How often somebody was told. */
  told = 0
  /** @type {string[]} */
  faults = []

  /** @param {any} world */
  constructor(world) {
    this.world = world
  }

  /** Somebody is about to keep something. @param {any} phone @param {Record<string, any>} what */
  trying(phone, what) {
    const one = { name: `${phone.name}${this.tried.size}`, life: phone.life, saved: false, excused: null, ...what }
    this.tried.set(one.name, one)
    this.world.count('tried')
    return one
  }

  /** The person was told that it is saved. @param {any} one @param {string} digest of its entry */
  saved(one, digest) {
    Object.assign(one, { saved: true, digest })
    this.told += 1
    this.world.count('saved')
  }

  /** What was kept on a phone, as far as told, is no longer looked for there. @param {(one: any) => boolean} which */
  moved(which) {
    for (const one of this.tried.values()) if (which(one)) one.life = null
  }

  /** Hold what lies on a phone against what its person was told. @param {any} phone */
  look(phone) {
    const { disk } = phone
    if (disk.writing()) return // what is half done is not there: the next look finds it done, or undone
    for (const { key: [person, kid] } of disk.records('keys')) this.made.set(kid, person)
    const entries = new Set(disk.rows('entries').map(({ digest }) => digest))
    const waiting = new Set(disk.rows('outbox').map(({ what, name }) => `${what} ${name}`))
    const held = new Set(disk.rows('receipts').map(({ what, name }) => `${what} ${name}`))
    for (const name of held) if (!this.gone.has(name)) this.received.add(name)
    const drafts = new Map(disk.rows('drafts').map(({ person, key, value }) => [`${person} ${key}`, value]))
    for (const [name, value] of phone.noted) if (!(drafts.get(name) >= value)) this.fault(`lost on the phone: ${name}, ${drafts.get(name)} for ${value}`)
    for (const one of this.tried.values()) {
      if (one.life !== phone.life || one.excused) continue
      if (one.saved && !entries.has(one.digest)) this.fault(`lost on the phone: entry ${one.name}`)
      if (one.saved && !waiting.has(`entry ${one.digest}`) && !held.has(`entry ${one.digest}`)) this.fault(`forgotten: entry ${one.name} neither waits nor has a receipt`)
      if (!one.photoKept || held.has(`photo ${one.sha256}`)) continue
      if (!one.flipped && !whole(disk, one.sha256)) this.fault(`lost on the phone: photo ${one.name}`)
      if (one.saved && !waiting.has(`photo ${one.sha256}`)) this.fault(`forgotten: photo ${one.name} neither waits nor has a receipt`)
    }
  }

  /** After something that is nobody's fault of ours: what is on no disk now, neither the server's nor a phone's, was lost
   * by that. @param {string} why */
  forgive(why) {
    const census = this.world.server('census')
    const disks = Object.values(this.world.phones).map(({ disk }) => disk)
    const entries = new Set([...census.log, ...census.apart].map((token) => read(token).digest))
    for (const disk of disks) for (const { digest } of disk.rows('entries')) entries.add(digest)
    const photos = new Set([...census.photos, ...census.photos_apart])
    const there = (name) => photos.has(name) || disks.some((disk) => whole(disk, name))
    const lost = [...this.received].filter((name) => !(name.startsWith('entry') ? entries.has(name.slice(6)) : there(name.slice(6))))
    for (const name of lost) {
      this.received.delete(name)
      this.gone.add(name)
    }
    for (const one of this.tried.values()) {
      const gone = (one.digest && !entries.has(one.digest)) || (one.sha256 && !there(one.sha256))
      if (gone) one.excused ??= why
      if (gone && one.digest) this.gone.add(`entry ${one.digest}`)
    }
  }

  /** What a key signed that was replaced on its phone, and that the backup put in place knows nothing of: it waits on the
   * phone, refused and shown, and no server takes it. Counted apart. */
  #orphans() {
    for (const row of Object.values(this.world.phones).flatMap(({ disk }) => disk.rows('outbox')).filter(orphan)) {
      const name = `entry ${row.name}`
      this.received.delete(name)
      this.gone.add(name)
      for (const one of this.tried.values()) if (one.digest === row.name) one.excused ??= 'of a key that the backup does not know'
    }
  }

  /** Everybody has had their chance: what is where? @param {any} census of the server */
  end(census) {
    if (this.world.setBack) this.#orphans()
    const log = census.log.map(read)
    const apart = census.apart.map(read)
    const there = new Map([...apart, ...log].map((one) => [one.digest, one]))
    const photos = new Set([...census.photos, ...census.photos_apart])
    for (const name of census.photos_missing) this.fault(`lost on the server: photo ${name}`)
    for (const name of this.received) {
      const [what, id] = name.split(' ')
      if (what === 'entry' ? !there.has(id) : !census.photos.includes(id)) this.fault(`lost: a receipt was held for ${name}`)
    }
    this.#unexpected([...log, ...apart], photos)
    for (const one of this.tried.values()) {
      const arrived = one.digest !== undefined && there.has(one.digest)
      if (one.saved && !one.excused && !arrived) this.fault(`lost: entry ${one.name}`)
      if (one.saved && !one.excused && one.sha256 && !photos.has(one.sha256)) this.fault(`lost: photo ${one.name}`)
      if (one.saved && arrived) this.world.count('arrived')
      if (one.excused && !arrived) this.world.count(`${one.excused}, by no fault of ours`)
    }
    for (const { digest, prev, seq } of there.values()) if (seq && !there.has(prev) && !this.gone.has(`entry ${prev}`)) this.fault(`gap: before entry ${digest}`)
    for (const phone of Object.values(this.world.phones)) this.#phone(phone, log, there, photos)
    for (const [kid, person] of this.made) if ((census.keys[kid] ?? person) !== person) this.fault(`given to another: key ${kid}`)
  }

  /** Each thing that is on the server was tried, and once. */
  #unexpected(entries, photos) {
    const seen = new Map()
    for (const { name, digest } of entries.filter(({ kind }) => kind !== 'job')) {
      const one = this.tried.get(name)
      if (!one) this.fault(`unexpected: ${name} on the server`)
      else if (seen.has(name) && seen.get(name) !== digest) this.fault(`unexpected: ${name} is there twice`)
      else if (!one.saved && !seen.has(name)) this.world.count('recovered')
      seen.set(name, digest)
    }
    const known = new Set([...this.tried.values()].map(({ sha256 }) => sha256))
    for (const name of photos) if (!known.has(name)) this.fault(`unexpected: photo ${name} on the server`)
  }

  /** What stays on a phone at the end, and whether it has everything of the others. */
  #phone(phone, log, there, photos) {
    const broken = new Set([...this.tried.values()].filter(({ excused }) => excused).map(({ sha256 }) => sha256))
    for (const row of phone.disk.rows('outbox')) {
      const fine = row.state === 'held' || (this.world.setBack && orphan(row)) || (row.state === 'damaged' && (photos.has(row.name) || broken.has(row.name)))
      if (!fine) this.fault(`stuck on ${phone.name}: ${row.what} ${row.name} ${row.state} ${row.refusal?.code ?? ''}`)
    }
    const rows = phone.disk.rows('entries')
    for (const { digest, token } of rows) {
      if (there.has(digest) && there.get(digest).token !== token) this.fault(`changed: ${digest} is not the same on ${phone.name} and the server`)
    }
    if (phone.build !== 'this' && phone.disk.raw?.version !== 2) return
    for (const person of phone.disk.rows('people').filter((one) => one.enrolment && !one.hidden && !one.revoked)) {
      const own = new Set(rows.filter((row) => row.person === person.id).map(({ digest }) => digest))
      const missing = log.filter(({ digest }) => !own.has(digest))
      if (missing.length) this.fault(`not brought over to ${phone.name}: ${missing.map(({ name }) => name)}`)
    }
  }

  /** @param {string} text */
  fault(text) {
    if (!this.faults.includes(text)) this.faults.push(text)
  }
}

const orphan = (row) => row.what === 'entry' && row.state === 'refused' && row.refusal?.code === 'unknown_key'

/** @param {string} token of an entry @returns {any} */
function read(token) {
  const [header, payload] = token.split('.')
  const said = JSON.parse(Buffer.from(payload, 'base64url').toString())
  const digest = sha256(`${header}.${payload}`, 'base64url')
  return { digest, token, kind: said.kind, prev: said.prev, seq: said.seq, name: said.body.name }
}

/** Whether all bytes of a photo lie there. @param {any} disk @param {string} name */
function whole(disk, name) {
  const parts = disk.rows('photo_chunks').filter(({ photo }) => photo === name).map(({ bytes }) => new Uint8Array(bytes))
  return disk.rows('photos').some((row) => row.sha256 === name) && sha256(Buffer.concat(parts), 'hex') === name
}
