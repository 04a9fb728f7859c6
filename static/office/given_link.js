// A link that is shown once: as a code another phone reads off this screen, as text, and to be passed on.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'
import { Problem } from '../frame/problem.js'
import { tell } from './asked.js'
import { when } from './when.js'

/** @param {{given: {url: string, expires: string, what: string}, once: string}} props `url`: below this page's own address */
export function GivenLink({ given, once }) {
  const [code, setCode] = useState(/** @type {any} */ (null))
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const link = new URL(given.url, location.origin).href
  const draw = () => tell('POST', '/api/qr', { text: link }).then((drawn) => { setCode(drawn); setFault(null) }, setFault)
  useEffect(() => { draw() }, [link])
  return html`
    <p class="big" role="status">✓ ${given.what}</p>
    <p class="problem"><strong>▲ ${once}</strong> ${say('link.until', { at: when(given.expires) })}</p>
    ${code && html`<svg class="qr" data-name="qr" role="img" aria-label=${say('link.qr')} viewBox=${`0 0 ${code.size} ${code.size}`} shape-rendering="crispEdges">
      <rect width=${code.size} height=${code.size} fill="#fff" /><path d=${code.path} fill="#000" /></svg>`}
    ${fault && html`<${Problem} fault=${fault} /><button type="button" class="press" data-name="draw-qr" onClick=${draw}>${say('link.qr.again')}</button>`}
    <p class="link-text" data-name="link">${link}</p>
    ${'share' in navigator
      ? html`<${MainAction} quiet name="share-link" label=${say('link.share')} run=${() => share(link, given.what)} />`
      : html`<${MainAction} quiet name="copy-link" label=${say('link.copy')} done=${say('link.copied')} run=${() => navigator.clipboard.writeText(link)} />`}`
}

/** @param {string} url @param {string} text */
async function share(url, text) {
  try {
    await navigator.share({ url, text })
  } catch (fault) {
    if (/** @type {any} */ (fault).name !== 'AbortError') throw fault // the person thought better of it
  }
}
