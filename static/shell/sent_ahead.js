// Entries that went out before a picture of theirs did. Their copies stay as long as it waits: they alone tell to what the
// picture belongs, where the browser throws its database away.

import { payloadOf } from '../entry/payload.js'
import { picturesOf } from '../outbox/pictures.js'
import { withDb } from '../storage/database.js'

/** Found once in a page. @type {Map<string, string>} a waiting picture -> the entry's digest, '' where there is none */
const known = new Map()

/** @param {any[]} rows of the outbox @returns {Promise<{what: 'entry', person: string, name: string}[]>} */
export async function sentAhead(rows) {
  const waiting = new Set(rows.filter(({ what }) => what === 'entry').map(({ person, job, seq, subject }) => `${person} ${job} ${seq} ${subject}`))
  const alone = rows.filter(({ what, person, job, seq, subject }) => what === 'photo' && !waiting.has(`${person} ${job} ${seq} ${subject}`))
  const unknown = alone.filter((row) => !known.has(spelled(row)))
  for (const [person, job] of new Map(unknown.map(({ person, job }) => [`${person} ${job}`, [person, job]])).values()) {
    const entries = await withDb(['entries'], 'readonly', (tx) => tx.store.index('job').getAll([person, job]))
    const told = entries.map((/** @type {any} */ { digest, token }) => ({ digest, ...said(token) }))
    for (const row of unknown.filter((one) => one.person === person && one.job === job)) {
      const entry = told.find((/** @type {any} */ { seq, subject, pictures }) => seq === row.seq && subject === row.subject && pictures.includes(row.name))
      known.set(spelled(row), entry?.digest ?? '')
    }
  }
  return alone.flatMap((row) => (known.get(spelled(row)) ? [{ what: /** @type {const} */ ('entry'), person: row.person, name: known.get(spelled(row)) ?? '' }] : []))
}

/** @param {any} row */
const spelled = ({ person, job, name, seq }) => `${person} ${job} ${name} ${seq}`

/** @param {string} token of a stored entry @returns {{seq: number, subject: string, pictures: string[]}} */
function said(token) {
  const payload = payloadOf(token)
  return { seq: payload.seq, subject: payload.subject, pictures: picturesOf(payload) }
}
