// The manifest goes first: a few hundred bytes tell the office what is still only on this phone.

import { manifestOf } from '../outbox/rows.js'
import { callAs } from '../people/token.js'

/** The last manifest each person's key delivered, to send none twice. @type {Map<string, string>} */
const sent = new Map()

/** @param {any} person @param {any[]} rows everything unsent of this person */
export async function sendManifest(person, rows) {
  const manifest = manifestOf(rows)
  const text = JSON.stringify(manifest)
  if (sent.get(person.kid) === text) return
  const reply = await callAs(person, 'POST', '/api/manifest', { json: manifest })
  if (reply.status < 300) sent.set(person.kid, text)
}
