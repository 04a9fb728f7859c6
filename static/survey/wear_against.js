// A wear mark against the computed movement, as the rulebook answers. Nothing is computed here.

import { html, useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'

/**
 * @param {any} told the survey @param {{length: any, uncertainty: any} | null} mark
 * @returns {any} the answer of the rule, of this very mark; null while there is none
 */
export function useWear(told, mark) {
  const [held, setHeld] = useState(/** @type {{asked: string, answer: any}} */ ({ asked: '', answer: null }))
  const inputs = told && mark && { ...told.wear.inputs, mark: mark.length, uncertainty: mark.uncertainty, fixed: told.wear.fixed }
  const asked = JSON.stringify(inputs)
  useEffect(() => {
    let here = true
    const hold = (/** @type {any} */ answer) => { if (here) setHeld({ asked, answer }) }
    if (inputs) {
      ask({ call: 'judge', rule: 'wear', inputs }).then(hold, (fault) =>
        hold({ rule: 'wear@1', verdict: 'not_determinable', reason: { code: 'missing_input', facts: { input: fault.field ?? '' } }, values: {}, inputs: {} }))
    }
    return () => { here = false }
  }, [asked])
  return inputs && held.asked === asked ? held.answer : null
}

/** @param {{answer: any}} props */
export function WearAgainst({ answer }) {
  if (!answer) return null
  const moved = answer.values.movement
  return html`<div class="statement stack" data-name="wear-against" data-code=${answer.reason?.code}>
    ${moved && html`<p><strong>${say('survey.found.movement', { movement: number(moved.value, moved.unit) })}</strong></p>`}
    ${answer.reason && html`<p>${say(`reason.${answer.reason.code}`, answer.reason.facts)}</p>`}
    <p class="hint">${say('survey.wear.what')}</p></div>`
}
