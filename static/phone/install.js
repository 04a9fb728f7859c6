// The app on the home screen, and whether the browser promised to keep its data.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { askPersist, install, installState } from '../shell/install.js'
import { MainAction } from '../frame/main_action.js'

export function Install() {
  const [state, setState] = useState(/** @type {any} */ (null))
  const read = async () => setState(await installState())
  useEffect(() => {
    read()
    addEventListener('seamwalk:install', read)
    return () => removeEventListener('seamwalk:install', read)
  }, [])
  if (!state) return null
  const put = () => install().then(read)
  const plead = () => askPersist().then(read)
  return html`
    ${state.standalone ? html`<p>✓ ${say('shell.install.done')}</p>`
    : state.offered ? html`<${MainAction} plain name="install" label=${say('shell.install')} under=${say('shell.install.why')} run=${put} />`
    : html`<p data-name="install-by-hand"><strong>${say('shell.install')}:</strong> ${say(state.by_hand ? 'shell.install.share' : 'shell.install.menu')}</p>
      ${state.by_hand && html`<p>▲ ${say('shell.install.empty')}</p>`}`}
    <p data-name="kept" data-kept=${String(state.kept)}>${state.kept ? `✓ ${say('shell.kept')}` : `▲ ${say('shell.not_kept')}`}</p>
    ${!state.kept && html`<${MainAction} quiet name="ask-to-keep" label=${say('shell.not_kept.ask')} run=${plead} />`}`
}
