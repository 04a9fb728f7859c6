// What became of a finding, step by step: who, when, in which words, with its pictures and readings.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { signed } from '../frame/signer.js'
import { Judged } from './against.js'
import { Pictures } from './pictures.js'
import { problem } from './told.js'

/** Every entry of the finding by its digest. @param {any} finding @returns {Record<string, any>} */
function byDigest(finding) {
  const all = [finding.assignment, ...finding.corrections, ...finding.rechecks, ...finding.reopenings, finding.concession].filter(Boolean)
  return Object.fromEntries(all.map((one) => [one.digest, one]))
}

/** @param {any} one of the finding's entries @returns {string[]} what was said in it */
function words(one) {
  if (!one) return []
  return [one.done, one.note, one.reason, one.reference].filter((text) => typeof text === 'string' && text.trim())
}

/** @param {{job: string, finding: any, people: import('../frame/people.js').People}} props */
export function History({ job, finding, people }) {
  const entries = byDigest(finding)
  return html`<ol class="steps-line history">${finding.history.map((/** @type {any} */ { kind, digest, by, at }) => {
    const one = entries[digest]
    return html`<li key=${digest} class="step done" data-name="step" data-kind=${kind}>
      <p><strong>${say(one?.result ? `finding.did.${kind}.${one.result}` : `finding.did.${kind}`)}</strong></p>
      <p class="hint">${[signed(people, { name: one?.name, role: one?.role, by }), clock(at)].filter(Boolean).join(' · ')}</p>
      ${words(one).map((text) => html`<p key=${text}>${`“${text}”`}</p>`)}
      ${(one?.problems ?? []).map((/** @type {string} */ code) => html`<p key=${code}><strong>▲ ${problem(code)}</strong></p>`)}
      <${Judged} verdict=${one?.verdict} />
      <${Pictures} job=${job} photos=${one?.photos ?? (one?.document ? [one.document] : [])} name=${say(`finding.did.${kind}`)} />
    </li>`
  })}</ol>`
}
