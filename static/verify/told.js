// The facts for a lay reader: the whole in one sentence, then each check with its sign, its state in words and what it means.

import { known, say } from '../words/say.js'
import { element } from './element.js'
import { FAILS, HOLDS, UNKNOWN } from './fact.js'

/** @typedef {import('./fact.js').Fact} Fact */

/** @type {Record<string, string>} */
const SIGNS = { [HOLDS]: '✓', [FAILS]: '✗', [UNKNOWN]: '?' }
const GROUPS = {
  files: ['bag_complete', 'bag_matches', 'record_enclosed'],
  people: ['keys_enrolled', 'entries_signed'],
  log: ['receipts_whole', 'entries_receipted', 'chains_whole', 'countersignatures_there', 'never_set_back'],
  things: ['photos_match', 'photos_complete', 'definitions_match', 'draw_recomputes'],
  server: ['server_known'],
}

/** @param {Fact[]} facts @param {string} name of what was chosen */
export function verdict(facts, name) {
  const failed = facts.filter((one) => one.status === FAILS).length
  const open = facts.filter((one) => one.status === UNKNOWN).length
  const [state, key] = failed ? [FAILS, 'failed'] : open ? [UNKNOWN, 'open'] : [HOLDS, 'all']
  return element(`section.end.${state}`, { 'data-name': 'verdict', 'data-state': state },
    element('p.verdict', { role: 'status' }, element('span.sign', { 'aria-hidden': 'true' }, SIGNS[state]), ` ${say(`verify_page.end.${key}`)}`),
    element('p', null, say(`verify_page.end.${key}.under`, { n: failed || open, all: facts.length })),
    element('p', null, say(failed ? 'verify_page.end.failed.do' : 'verify_page.end.limits')),
    element('p.hint', null, say('verify_page.given', { name })))
}

/** @param {Fact[]} facts */
export function groups(facts) {
  return Object.entries(GROUPS).map(([group, names]) => element('section', null,
    element('h2', null, say(`verify_page.group.${group}`)),
    ...names.flatMap((name) => facts.filter((one) => one.name === name)).map(one)))
}

/** @param {Fact} fact */
function one({ name, status, reason, about }) {
  return element(`details.${status}`, { 'data-name': 'fact', 'data-fact': name, 'data-status': status, 'data-reason': reason, open: status !== HOLDS },
    element('summary', null,
      element('span.sign', { 'aria-hidden': 'true' }, SIGNS[status]),
      element('span.name', null, say(`verify_page.fact.${name}`)),
      element('span.state', null, say(`verify_page.status.${status}`))),
    element('div.inside.stack', null,
      reason && element('p', null, element('strong', null, why(reason, about))),
      element('p', null, say(`verify_page.fact.${name}.means`, { lots: 0, skipped: 0, repeated: 0, ...about }))))
}

/** @param {string} reason @param {Record<string, any>} about */
function why(reason, about) {
  const { code = '' } = about
  const told = known(`verify_page.token.${code}`) ? `verify_page.token.${code}` : 'verify_page.token.other'
  const none = { refused: 0, breaks: 0, gaps: 0, forks: 0 }
  return say(`verify_page.reason.${reason}`, { ...none, breaks: about.orphans ?? 0, ...about, why: say(told, { code }) })
}
