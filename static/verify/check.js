// Check a package, fact by fact, in the order in which a reader asks. Names and states are those of `seamwalk verify`.

import { Refused } from '../entry/refused.js'
import { bagFacts, hashesOf } from './bag.js'
import { chainsWhole, entriesReceipted, receiptsWhole } from './chains.js'
import { countersignedFact } from './countersigned.js'
import { fails, holds, unknown } from './fact.js'
import { drawsOf } from './lots.js'
import { TOKENS } from './names.js'
import { definitionsFact, endingsOf, photoFacts } from './originals.js'
import { objectIn, textOf } from './package.js'
import { late, neverSetBack } from './set_back.js'
import { keyOf, readTokens } from './tokens.js'
import { Unreadable } from './unreadable.js'

/** @typedef {import('./fact.js').Fact} Fact */
/** What comes with the page: kinds of entries, sampling tables. @typedef {{kinds: string[], tables: import('./plan.js').Tables}} Known */
/**
 * `tokens` null where the record does not read.
 * @typedef {{facts: Fact[], tokens: import('./tokens.js').Tokens | null, drawn: import('./lots.js').Drawn[],
 *   hashes: import('./bag.js').Hashes}} Found
 */

const OF_THE_RECORD = ['keys_enrolled', 'entries_signed', 'receipts_whole', 'never_set_back', 'entries_receipted', 'chains_whole', 'draw_recomputes', 'photos_match', 'photos_complete', 'definitions_match']

/**
 * Never throws for anything in the files. @param {import('./package.js').Files} files @param {Known} known
 * @param {(share: number) => void} [progress] done, of 1 @returns {Promise<Found>}
 */
export async function check(files, known, progress = () => {}) {
  // A signature takes about as long as hashing a hundred kilobytes: a guess, for the bar alone.
  const each = 100_000
  const sizes = [...files.values()].reduce((sum, file) => sum + file.size, 0)
  const all = sizes + each * linesIn(files)
  let done = 0
  const step = (/** @type {number} */ part) => progress(Math.min(1, (done += part) / all))
  const hashes = await hashesOf(files, step)
  const bag = await bagFacts(files, hashes)
  let tokens
  try {
    tokens = await read(files, known.kinds, () => step(each))
  } catch (error) {
    const reason = error instanceof Unreadable || error instanceof Refused ? error.code : 'unreadable_record'
    const rest = OF_THE_RECORD.map((name) => unknown(name, 'unreadable_record'))
    const facts = [...bag, fails('record_enclosed', 'unreadable_record', { error: reason }), ...rest, countersignedFact(hashes, null)]
    return { facts, tokens: null, drawn: [], hashes }
  }
  const { fact, drawn } = await drawsOf(tokens, known.tables)
  const { enrolments, enrolmentFaults, entries, entryFaults } = tokens
  const facts = [
    ...bag,
    holds('record_enclosed', { count: entries.length }),
    signed('keys_enrolled', enrolments.length, enrolmentFaults),
    signed('entries_signed', entries.length, [...entryFaults, ...late(tokens)]),
    receiptsWhole(tokens), neverSetBack(tokens), entriesReceipted(tokens), chainsWhole(tokens), fact,
    ...photoFacts(files, hashes, tokens, await endingsOf(files)), definitionsFact(files, hashes, entries), countersignedFact(hashes, tokens),
  ]
  progress(1)
  return { facts, tokens, drawn, hashes }
}

/**
 * Whether the server's key is the one whose fingerprint was got by another way: its thumbprint (RFC 7638) as 64
 * hexadecimal digits. @param {string} typed @param {string | null} mine
 */
export function serverKnown(typed, mine) {
  const given = typed.replace(/[\s:]/g, '').toLowerCase()
  if (!given || !mine) return unknown('server_known', 'no_fingerprint_given', { fingerprint: mine })
  if (!/^[0-9a-f]{64}$/.test(given)) return fails('server_known', 'not_a_fingerprint', { given: typed.slice(0, 100) })
  return given === mine ? holds('server_known', { fingerprint: mine }) : fails('server_known', 'other_server', { fingerprint: mine, given })
}

/** The fingerprint of the server's key in a package, null where it is none. @param {import('./package.js').Files} files */
export async function fingerprintIn(files) {
  try {
    const { kid } = await keyOf(/** @type {any} */ (await objectIn(files, TOKENS.server)))
    const bytes = atob(kid.replaceAll('-', '+').replaceAll('_', '/'))
    return Array.from(bytes, (letter) => letter.charCodeAt(0).toString(16).padStart(2, '0')).join('')
  } catch {
    return null
  }
}

/** @param {import('./package.js').Files} files @param {string[]} kinds @param {() => void} step */
async function read(files, kinds, step) {
  const server = /** @type {any} */ (await objectIn(files, TOKENS.server))
  const [enrolments, entries, receipts] = await Promise.all([TOKENS.enrolments, TOKENS.entries, TOKENS.receipts].map((name) => textOf(files, name, 'latin1')))
  return readTokens({ server, enrolments, entries, receipts }, kinds, step)
}

/** About how many lines the signed files have. @param {import('./package.js').Files} files */
function linesIn(files) {
  const signed = [TOKENS.enrolments, TOKENS.entries, TOKENS.receipts].map((name) => files.get(name)?.size ?? 0)
  return signed.reduce((sum, size) => sum + size, 0) / 800
}

/** @param {string} name @param {number} count @param {import('./tokens.js').Fault[]} faults */
function signed(name, count, faults) {
  if (!faults.length) return holds(name, { count })
  return fails(name, 'not_signed', { count, faults: faults.length, line: faults[0].line, code: faults[0].code })
}
