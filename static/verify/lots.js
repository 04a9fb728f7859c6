// The draws of a job's lots: by whose chance, over what, and which panels come out. The twin of
// inspect_app/evidence/draws.py, but for what a report prints of them.

import { decode } from '../entry/base64url.js'
import { Refused } from '../entry/refused.js'
import { draw, seedOf } from './draw.js'
import { fails, holds } from './fact.js'
import { asComputed } from './plan.js'
import { digestOfRows, member, panelCount, rowsOf, sizeOf } from './population.js'
import { parseStatement } from './statement.js'
import { byKey } from './tokens.js'

/** @typedef {import('./entry.js').Entry} Entry */
/** @typedef {import('./tokens.js').Tokens} Tokens */
/** What came out of a lot's draw, in the order drawn.
 * @typedef {{lot: string, purpose: string, crew: string, day: string, by: string, size: number, drawn: {area: string, panel: number}[]}} Drawn */

/**
 * @param {Tokens} tokens @param {import('./plan.js').Tables} tables
 * @returns {Promise<{fact: import('./fact.js').Fact, drawn: Drawn[]}>}
 */
export async function drawsOf(tokens, tables) {
  /** @type {Map<string, Entry[]>} */
  const lots = new Map()
  for (const entry of tokens.entries.filter((one) => one.kind === 'lot')) {
    lots.set(entry.payload.subject, [...(lots.get(entry.payload.subject) ?? []), entry])
  }
  const versions = new Map(tokens.entries.map((one) => [one.digest, one]))
  /** @type {Map<string, Set<number>>} */
  const used = new Map()
  /** @type {Drawn[]} */
  const drawn = []
  let wrong = null
  for (const [lot, every] of lots) {
    const first = firstOf(lot, every)
    const fault = await faultOf(first, versions, tokens.server, tables)
    if (fault) {
      wrong ??= { lot, fault }
      continue
    }
    const [owner, series, n] = lot.split('/')
    const numbers = used.get(`${owner}/${series}`) ?? new Set()
    used.set(`${owner}/${series}`, numbers.add(Number(n)))
    drawn.push(await drawnBy(first))
  }
  const about = {
    lots: lots.size,
    repeated: [...lots.values()].reduce((sum, every) => sum + every.length - 1, 0),
    skipped: [...used.values()].reduce((sum, numbers) => sum + Math.max(...numbers) + 1 - numbers.size, 0),
  }
  const fact = wrong ? fails('draw_recomputes', wrong.fault, { ...about, lot: wrong.lot }) : holds('draw_recomputes', about)
  return { fact, drawn }
}

/** The entry that draws a lot: of all that use its ticket, the first of the ticket's own key. @param {string} lot @param {Entry[]} every */
function firstOf(lot, every) {
  const owner = lot.split('/')[0]
  const rank = (/** @type {Entry} */ one) => Number(one.kid !== owner)
  return [...every].sort((a, b) => rank(a) - rank(b) || a.payload.seq - b.payload.seq || (a.digest < b.digest ? -1 : 1))[0]
}

/** @param {Entry} lot @param {Map<string, Entry>} versions @param {import('./tokens.js').Key} server @param {import('./plan.js').Tables} tables */
async function faultOf(lot, versions, server, tables) {
  try {
    return (await ticketFault(lot, server)) ?? (await populationFault(lot.payload.body, versions, tables))
  } catch { // a body that nobody can compute with: whatever it is, this draw does not recompute
    return 'other_draw'
  }
}

/** @param {Entry} lot @param {import('./tokens.js').Key} server */
async function ticketFault({ kid, payload: { subject, job, body: { ticket } } }, server) {
  let statement
  try {
    statement = await parseStatement(String(ticket.statement))
    await byKey(statement, server)
  } catch (error) {
    if (error instanceof Refused) return 'ticket_not_signed'
    throw error
  }
  const said = statement.payload
  if (statement.kind !== 'ticket') return 'ticket_not_signed'
  const named = `${said.kid}/${said.series}/${said.n}` === subject
  const same = ['series', 'n', 'random'].every((one) => said[one] === ticket[one])
  return named && said.job === job && said.kid === kid && same ? null : 'ticket_not_theirs'
}

/** @param {Record<string, any>} body @param {Map<string, Entry>} versions @param {import('./plan.js').Tables} tables */
async function populationFault(body, versions, tables) {
  const rows = rowsOf(body.population)
  if (!rows || body.size !== sizeOf(rows) || body.population_digest !== (await digestOfRows(rows))) return 'other_draw'
  if (!asComputed(body, tables) || !body.placements.every((/** @type {string} */ one) => versions.has(one))) return 'other_draw'
  return body.population.every((/** @type {any} */ row) => onTheRoof(row, versions)) ? null : 'other_draw'
}

/** Whether a row's panels have seams on the very area and assembly it names: all but the last have. @param {any} row @param {Map<string, Entry>} versions */
function onTheRoof(row, versions) {
  const [area, assembly] = [versions.get(row.area_entry), versions.get(row.assembly_entry)]
  if (area?.kind !== 'area' || area.payload.subject !== row.area || assembly?.kind !== 'assembly') return false
  if (area.payload.body.assembly !== assembly.payload.subject) return false
  const there = panelCount(area.payload.body, assembly.payload.body)
  return there !== null && row.to < there
}

/** @param {Entry} entry @returns {Promise<Drawn>} */
async function drawnBy({ payload: { subject, by, body } }) {
  const rows = rowsOf(body.population) ?? []
  const seed = await seedOf(decode(body.ticket.random, 'random'), subject)
  const places = await draw(body.size, Math.min(body.n, body.size), seed)
  return { lot: subject, purpose: body.purpose, crew: body.crew, day: body.day, by, size: body.size, drawn: places.map((at) => member(rows, at)) }
}
