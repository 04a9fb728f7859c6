// What cannot be taken back takes two taps, the second in another place than the first.

import { html, useLayoutEffect, useRef, useState } from './view.js'
import { say } from '../words/say.js'
import { Problem } from './problem.js'

/** @param {{label: string, ask: string, run: () => any, name?: string}} props */
export function Twice({ label, ask, run, name }) {
  const [asked, setAsked] = useState(false)
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const next = useRef(/** @type {any} */ (null))
  const pressed = useRef(false)
  // What was pressed goes from the page: the focus goes on to what took its place, the harmless press first.
  useLayoutEffect(() => { if (pressed.current) next.current?.focus() }, [asked]) // before the next key can be pressed
  const turn = (/** @type {boolean} */ on) => { pressed.current = true; setAsked(on) }
  const sure = async () => {
    setAsked(false)
    setFault(null)
    try {
      await run()
    } catch (reason) {
      setFault(reason)
    }
  }
  if (!asked) return html`<button key="ask" ref=${next} type="button" class="press" data-name=${name} onClick=${() => turn(true)}>${label}</button><${Problem} fault=${fault} />`
  return html`<div key="sure" class="problem" role="alert">
    <strong>${ask}</strong>
    <button ref=${next} type="button" class="press main plain" onClick=${() => turn(false)}>${say('keep_it')}</button>
    <button type="button" class="press" data-name=${name ? name + '-sure' : undefined} onClick=${sure}>${label}</button>
  </div>`
}
