// Save a copy: one file of all that is only on this phone, made without signal, to be carried to the office by hand.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { size } from '../frame/size.js'
import { canShare, download, share } from '../copy/hand_over.js'
import { makeCopy } from '../copy/make.js'
import { everyRow } from '../outbox/counts.js'
import { countRows } from '../outbox/rows.js'
import { openDrafts } from '../storage/drafts.js'

/** @param {{person: any}} props */
export function Copy({ person }) {
  const [waiting, setWaiting] = useState(/** @type {any} */ (null))
  const [done, setDone] = useState(0)
  const [copy, setCopy] = useState(/** @type {import('../copy/make.js').Copy | null} */ (null))
  const [given, setGiven] = useState(false)
  const giveBack = useRef(() => {})
  const read = async () => setWaiting({ ...countRows(await everyRow()), drafts: await openDrafts() })
  useEffect(() => {
    read()
    for (const name of ['seamwalk:kept', 'seamwalk:sync']) addEventListener(name, read)
    return () => { for (const name of ['seamwalk:kept', 'seamwalk:sync']) removeEventListener(name, read) }
  }, [person?.id])
  useEffect(() => () => giveBack.current(), []) // as late as can be: a slow disk may still be taking the file
  if (!waiting) return null
  const make = async () => {
    setDone(0)
    setCopy(await makeCopy(setDone))
  }
  const hand = async () => { if (copy && (await share(copy.file))) setGiven(true) }
  const store = () => {
    if (!copy) return
    giveBack.current()
    giveBack.current = download(copy.file)
    setGiven(true)
  }
  const again = () => { setCopy(null); setGiven(false); return read() }
  const n = waiting.entries + waiting.photos
  return html`<${Screen} title=${say('copy')} back=${path('unsent')} backTo=${say('unsent')}>
    <p class="big">${say('copy.what')}</p>
    <p>${say('copy.stays')}</p>
    <p>${say('copy.read')}</p>
    ${waiting.drafts > 0 && html`<p data-name="drafts">${say('copy.drafts', { n: waiting.drafts })}</p>`}
    ${copy ? html`<${Made} copy=${copy} given=${given} />
      ${canShare(copy.file) && html`<${MainAction} name="share-copy" label=${say('copy.share')} under=${say('copy.share.under')} run=${hand} />`}
      <${MainAction} plain=${canShare(copy.file)} name="download-copy" label=${say('copy.download')} under=${say('copy.download.under')} run=${store} />
      <button type="button" class="press" data-name="copy-again" onClick=${again}>${say('copy.again')}</button>`
    : n === 0 ? html`<p class="big">✓ ${say('copy.nothing')}</p>` : html`
      <p role="status">${done > 0 ? say('copy.progress', { n: done, of: waiting.photos }) : ''}</p>
      <${MainAction} name="make-copy" label=${say('copy.make')} under=${say('copy.make.under', { entries: waiting.entries, photos: waiting.photos, size: size(waiting.bytes) })} run=${make} />`}
  <//>`
}

/** @param {{copy: import('../copy/make.js').Copy, given: boolean}} props */
function Made({ copy, given }) {
  return html`<div class="stack" role="status" data-name="copy-made" data-entries=${copy.entries} data-photos=${copy.photos} data-lost=${copy.lost} data-given=${String(given)}>
    <p class="done-bar">${given ? `✓ ${say('copy.given', { name: copy.file.name })}` : `▲ ${say('copy.ready')}`}</p>
    <p>${say('copy.holds', { entries: copy.entries, photos: copy.photos, size: size(copy.file.size) })}</p>
    ${copy.lost > 0 && html`<p><strong>${say('copy.lost', { n: copy.lost })}</strong></p>`}
    ${copy.seals === 0 && html`<p><strong>${say('copy.not_sealed')}</strong></p>`}
  </div>`
}
