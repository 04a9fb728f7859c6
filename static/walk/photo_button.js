// Take a photo, or pick one. What is waited for is saved before the camera opens: the page may be killed behind it.

import { html, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Problem } from '../frame/problem.js'
import { whereAmI } from './position.js'

/**
 * @param {{role: string, again?: boolean, waiting: boolean, wait: (on: boolean) => Promise<any>,
 *   keep: (file: File, source: 'camera' | 'picked', position: any) => Promise<any>}} props
 *   `again`: the camera only, for a picture to be taken once more; `waiting`: a photo was being taken when the page was last here; `wait` resolves when that is saved
 */
export function PhotoButton({ role, again, waiting, wait, keep }) {
  const inputs = useRef(/** @type {Record<string, any>} */ ({}))
  const position = useRef(/** @type {Promise<any>} */ (Promise.resolve(null)))
  const [state, setState] = useState('')
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const open = (/** @type {string} */ source) => async () => {
    setFault(null)
    setState('open')
    if (source === 'camera') position.current = whereAmI()
    try {
      await wait(true)
    } catch (problem) { // nothing could be kept of the photo either
      setState('')
      return setFault(problem)
    }
    inputs.current[source].click()
  }
  const took = (/** @type {'camera' | 'picked'} */ source) => async (/** @type {any} */ event) => {
    const [file] = event.target.files ?? []
    if (!file) return
    setState('busy')
    try {
      await keep(file, source, source === 'camera' ? await position.current : null)
      await wait(false)
    } catch (problem) {
      setFault(problem)
    }
    const input = inputs.current[source] // gone where its screen was left meanwhile
    if (input) input.value = '' // only now: the file's bytes were read
    setState('')
  }
  const gaveUp = () => { setState(''); wait(false) }
  const one = (/** @type {'camera' | 'picked'} */ source) => html`<div data-name=${`${again ? 'again' : source}-${role}`}>
    <button type="button" class="press tall" disabled=${state === 'busy'} onClick=${open(source)}>
      <span class="label">${say(state === 'busy' ? 'photo.keeping' : again ? 'photo.again' : `photo.${source}`)}</span></button>
    <input ref=${(/** @type {any} */ node) => { inputs.current[source] = node }} class="gone" tabindex="-1" aria-hidden="true" type="file" accept="image/*"
      capture=${source === 'camera' ? 'environment' : undefined} onChange=${took(source)} onCancel=${gaveUp} />
  </div>`
  return html`
    ${waiting && state === '' && html`<p class="problem" role="alert"><strong>▲ ${say('photo.waiting', { role: say(`photo.${role}`) })}</strong></p>`}
    <div class="ways">${one('camera')}${!again && one('picked')}</div>
    <${Problem} fault=${fault} />`
}
