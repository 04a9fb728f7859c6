// The app on the home screen, and whether the browser promised to keep its data.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { askPersist, install, installState } from '../shell/install.js'
import { MainAction } from '../frame/main_action.js'

/** @param {{promised?: () => any}} props `promised`: where the screen itself says that the browser may clear, what to do once it may not */
export function Install({ promised }) {
  const [state, setState] = useState(/** @type {any} */ (null))
  const [refused, setRefused] = useState(false)
  const read = async () => {
    const now = await installState()
    setState(now)
    if (now.kept) promised?.()
  }
  useEffect(() => {
    read()
    addEventListener('seamwalk:install', read)
    return () => removeEventListener('seamwalk:install', read)
  }, [])
  if (!state) return null
  const put = () => install().then(read)
  const plead = async () => {
    setRefused(!(await askPersist()))
    await read()
  }
  return html`
    ${state.standalone ? html`<p>✓ ${say('shell.install.done')}</p>`
    : state.offered ? html`<${MainAction} plain name="install" label=${say('shell.install')} under=${say('shell.install.why')} run=${put} />`
    : html`<p data-name="install-by-hand"><strong>${say('shell.install')}:</strong> ${say(state.by_hand ? 'shell.install.share' : 'shell.install.menu')}</p>
      ${state.by_hand && html`<p>▲ ${say('shell.install.empty')}</p>`}`}
    ${(state.kept || !promised) && html`<p data-name="kept" data-kept=${String(state.kept)}>${state.kept ? `✓ ${say('shell.kept')}` : `▲ ${say('shell.not_kept')}`}</p>`}
    ${!state.kept && html`<${MainAction} quiet name="ask-to-keep" label=${say('shell.not_kept.ask')} run=${plead} />
      <div role="status" data-name="refused">${refused && html`<p>▲ ${say(state.standalone ? 'shell.not_kept.refused' : 'shell.not_kept.refused_here')}</p>`}</div>`}`
}
