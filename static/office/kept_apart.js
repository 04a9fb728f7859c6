// What is kept apart of one person: each thing as it says it is, which of it to let in, why, and the signature.

import { html, useState } from '../frame/view.js'
import { known as knownWord, say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { useDraft } from '../frame/draft.js'
import { enter } from '../frame/enter.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Part } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { when } from './when.js'

/** @param {{job: string, of: any[], person: any}} props `of`: at least one, all by the same person, as the office tells of them */
export function KeptApart({ job, of, person }) {
  const [{ by, who }] = of
  const key = `office-admission/${job}/${by}`
  const [draft, change] = useDraft(person.id, key, { left: [], reason: '' })
  const [signed, setSigned] = useState(/** @type {string[]} */ ([]))
  if (!draft) return null
  const waiting = of.filter((one) => !signed.includes(one.digest))
  const chosen = waiting.filter((one) => !draft.left.includes(one.digest))
  const turn = (/** @type {string} */ digest) => change((/** @type {any} */ old) => ({
    left: old.left.includes(digest) ? old.left.filter((/** @type {string} */ one) => one !== digest) : [...old.left, digest] }))
  const admit = async () => {
    const reason = draft.reason.trim()
    for (const { digest } of chosen) { // one word for each: cut off in between, what was signed is signed
      await enter({ job, kind: 'admission', subject: digest, body: { entry: digest, reason, name: person.name, role: person.role },
        draft: digest === chosen.at(-1).digest ? key : undefined })
      setSigned((/** @type {string[]} */ old) => [...old, digest])
    }
  }
  const wants = !chosen.length ? 'apart.wants_one' : !draft.reason.trim() ? 'apart.wants_reason' : ''
  return html`<${Part} name=${who}>
    ${signed.length > 0 && html`<p class="done-bar" role="status" data-name="signed" data-n=${signed.length}>✓ ${say('apart.admitted', { n: signed.length })}</p>`}
    ${waiting.length > 0 && html`<div class="stack" data-name="kept-apart" data-by=${by}>
      <${Choice} many name="let-in" label=${say('apart.which')} value=${chosen.map((one) => one.digest)} onChange=${turn}
        options=${waiting.map((one) => ({ value: one.digest, label: say(`kind.${one.kind}`), under: underneath(one) }))} />
      <${TextField} name=${`reason-${by}`} lines=${3} label=${say('apart.why')} hint=${say('apart.why.hint')} value=${draft.reason} onChange=${(/** @type {string} */ reason) => change({ reason })} />
      <${MainAction} name="sign-admission" label=${say('apart.sign', { n: chosen.length })} under=${say(wants || 'apart.sign.under', { name: person.name })} disabled=${Boolean(wants)} run=${admit} />
    </div>`}
  <//>`
}

/** @param {any} one */
function underneath(one) {
  const why = `apart.reason.${one.reason}`
  return [say('apart.said', { at: clock(one.at) }), say('apart.came', { at: when(one.received_at) }), knownWord(why) ? say(why) : one.reason,
    one.photos ? `${one.held === one.photos ? '✓' : '▲'} ${say('apart.photos', { held: one.held, n: one.photos })}` : '',
    say('apart.digest', { digest: one.digest.slice(0, 12) })].filter(Boolean).join(' · ')
}
