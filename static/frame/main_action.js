// The one next thing of a screen: full width, 120 px at least. While it works it says so and takes no second tap.

import { html, useState, useRef } from './view.js'
import { say } from '../words/say.js'
import { Problem } from './problem.js'
import { tone } from './tone.js'

/**
 * @param {{label: string, under?: string, run: () => any, disabled?: boolean, plain?: boolean, quiet?: boolean, done?: string, name?: string}} props
 *   `plain`: of two next things the second; `quiet`: a way out, no taller than any press; `done`: what it says over its full width once `run` has resolved
 */
export function MainAction({ label, under, run, disabled, plain, quiet, done, name }) {
  const [state, setState] = useState('')
  const [problem, setProblem] = useState(/** @type {any} */ (null))
  const busy = useRef(false)
  const tap = async () => {
    if (busy.current) return
    busy.current = true
    setState('busy')
    setProblem(null)
    try {
      await run()
      if (done) tone()
      setState(done ? 'done' : '')
    } catch (fault) {
      setProblem(fault)
      setState('')
    }
    busy.current = false
  }
  return html`<div class="stack">
    <button type="button" class=${quiet ? 'press' : plain ? 'press main plain' : 'press main'} data-name=${name} data-state=${state}
      disabled=${disabled} aria-busy=${state === 'busy'} onClick=${tap}>
      <span class="label">${state === 'busy' ? say('working') : state === 'done' ? '✓ ' + done : label}</span>
      ${under && state === '' && html`<span class="under">${under}</span>`}
    </button>
    <${Problem} fault=${problem} />
  </div>`
}
