// One thing to fix on a crew's list, with its box to tick.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { today } from '../frame/today.js'
import { signer } from '../frame/signer.js'
import { causeWords } from './cause.js'
import { Small, firstPicture } from './pictures.js'
import { Weight } from './states.js'
import { askedBy, measured, note, onPlan, title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], finding: any, people: import('../frame/people.js').People, n: number, ticked: boolean, tick: (on: boolean) => any}} props */
export function Task({ job, record, definitions, finding, people, n, ticked, tick }) {
  const { definition, item } = askedBy(definitions, finding)
  const { assignment } = finding
  const day = assignment?.by_day
  const cause = causeWords(definition, assignment?.cause)
  const back = finding.rechecks.filter((/** @type {any} */ one) => one.result === 'not_good' && one.counts && one.note).at(-1)
  const picture = firstPicture(finding)
  const plan = onPlan(job, record, finding)
  return html`<li class="task" data-name="task" data-ticked=${ticked}>
    <div class="task-told">
      <h3><span class="task-n">${n}</span> <span class="task-box" aria-hidden="true"></span> ${where(record, finding)}</h3>
      <p><${Weight} severity=${finding.severity} />${day ? html` · <strong>${say('finding.by_day', { day })}${day < today() ? ` ▲ ${say('tomorrow.past')}` : ''}</strong>` : ''}</p>
      <p class="big">${finding.source === 'hand' ? title(definitions, finding) : `${say('result.fail')}: ${title(definitions, finding)}`}</p>
      ${measured(finding).map((text) => html`<p key=${text}>${text}</p>`)}
      ${note(finding) && html`<p>${`“${note(finding)}”`}</p>`}
      <p><strong>${say('finding.required')}:</strong> ${finding.source === 'hand' ? finding.required : pick(item?.basis) ?? '—'}</p>
      ${item && html`<p><strong>${say('tomorrow.why')}:</strong> ${pick(item.why)}</p>`}
      ${cause && html`<p><strong>${say('assign.cause')}:</strong> ${cause}</p>`}
      ${assignment?.note && html`<p>${`“${assignment.note}”`}</p>`}
      ${back && html`<p><strong>${say('finding.did.recheck.not_good')}:</strong> ${`“${back.note}” ${signer(people, back)}`}</p>`}
    </div>
    ${picture && html`<${Small} ...${{ job, sha256: picture }} name=${say('finding.picture')} />`}
    <div class="task-presses">
      <button type="button" class=${ticked ? 'press on' : 'press'} aria-pressed=${ticked} data-name="tick" onClick=${() => tick(!ticked)}><span class="tick" aria-hidden="true">${ticked ? '■' : '□'}</span>
        <span class="label">${say(ticked ? 'tomorrow.is_ticked' : 'tomorrow.tick')}</span></button>
      ${ticked && html`<a class="press" href=${path('job', job, 'correct', finding.id)} data-name="to-correct"><span class="label">${say('tomorrow.correct')}</span><span class="go" aria-hidden="true">→</span></a>`}
      <a class="press" href=${path('job', job, 'finding', finding.id)} data-name="open-finding"><span class="label">${say('finding')}</span><span class="go" aria-hidden="true">→</span></a>
      ${plan && html`<a class="press" href=${plan} data-name="on-plan"><span class="label">${say('finding.on_plan')}</span><span class="go" aria-hidden="true">→</span></a>`}
    </div>
  </li>`
}
