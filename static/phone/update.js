// Which build runs, and the next one where it waits: it takes over by itself only when nothing is open.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { build } from '../server/build.js'
import { openDrafts } from '../storage/drafts.js'
import { repairApp } from '../shell/repair.js'
import { applyUpdate, updateBehind, updateWaiting } from '../shell/update.js'
import { MainAction } from '../frame/main_action.js'
import { Twice } from '../frame/twice.js'

const CHANGES = ['seamwalk:update', 'seamwalk:kept', 'seamwalk:sync']

export function Update() {
  const [running, setRunning] = useState('')
  const [waiting, setWaiting] = useState(updateWaiting())
  const [behind, setBehind] = useState(updateBehind())
  const [open, setOpen] = useState(0)
  useEffect(() => {
    const read = () => {
      build().then(setRunning)
      setWaiting(updateWaiting())
      setBehind(updateBehind())
      openDrafts().then(setOpen)
    }
    read()
    for (const name of CHANGES) addEventListener(name, read)
    return () => { for (const name of CHANGES) removeEventListener(name, read) }
  }, [])
  return html`<p>${say('shell.build')} <strong class="number" data-name="build">${running ? running.slice(0, 8) : '…'}</strong></p>
    ${waiting ? html`
      <p class="big" role="status">▲ ${say('shell.update')}</p>
      ${open > 0 && html`<p data-name="update-waits">${say('shell.update.open', { n: open })}</p>`}
      <${MainAction} plain name="update-now" label=${say('shell.update.now')} under=${say('shell.update.keeps')} run=${applyUpdate} />`
    : behind ? html`<p class="big" role="status" data-name="update-behind">▲ ${say('shell.update.behind')}</p>`
    : html`<p>${say('shell.update.none')}</p>`}
    <${Twice} name="repair" label=${say('shell.repair')} ask=${say('shell.repair.ask')} run=${repairApp} />`
}
