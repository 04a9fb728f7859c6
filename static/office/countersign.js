// Countersign a report: by one's own key file, used for this signature alone and kept nowhere, or with any other program.

import { html, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Part, Screen } from '../frame/screen.js'
import { size } from '../frame/size.js'
import { TextField } from '../frame/text_field.js'
import { Trouble } from '../words/trouble.js'
import { tell, useAsked } from './asked.js'
import { Signatures } from './signatures.js'
import { Told } from './told.js'

const LARGEST_KEY = 48 * 1024 // bytes: one with its whole chain takes some five thousand
const SLOWEST = 16 // bytes a ms that the way may carry at worst

/** @param {{job: string, record: any, rest: string[]}} props `rest`: the report's number */
export function Countersign({ job, record, rest }) {
  const number = Number(rest[0])
  const asked = useAsked(`/api/jobs/${job}/reports/${number}/signing`)
  return html`<${Screen} title=${say('signing.of', { number })} over=${record.job.name} back=${path('job', job, 'report', String(number))} backTo=${say('sealed.number', { number })}>
    <${Told} asked=${asked}>${(/** @type {any} */ known) => html`
      <${Signatures} signatures=${known.signatures} />
      ${!known.may ? html`<p data-name="may-not">${say('signing.may_not')}</p>`
      : known.free === 0 ? html`<p data-name="no-room">${say('signing.no_room')}</p>`
      : html`<${OtherProgram} ...${{ job, number, read: asked.read }} /><${OwnKey} ...${{ job, number, read: asked.read }} />`}`}
    <//>
  <//>`
}

/** @param {{job: string, number: number, read: () => Promise<void>}} props */
function OwnKey({ job, number, read }) {
  const [file, setFile] = useState(/** @type {File | null} */ (null))
  const [passphrase, setPassphrase] = useState('') // in no draft: it is gone with this screen
  const [words, setWords] = useState('')
  const run = async () => {
    if (!file) return
    if (file.size > LARGEST_KEY) throw new Trouble('signing.no_key_file', { field: 'pkcs12', value: file.name })
    const pkcs12 = base64(await bytesOf(file))
    await tell('POST', `/api/jobs/${job}/reports/${number}/signing`, { pkcs12, passphrase, words })
    setPassphrase('')
    setFile(null)
    await read()
  }
  return html`<${Part} name=${say('signing.own_key')}>
    <p>${say('signing.own_key.what')}</p>
    <${FileChoice} name="key-file" label=${say('signing.choose_key')} accept=".p12,.pfx,application/x-pkcs12" file=${file} setFile=${setFile} />
    <${TextField} name="passphrase" type="password" label=${say('signing.passphrase')} hint=${say('signing.passphrase.hint')} value=${passphrase} onChange=${setPassphrase} />
    <${TextField} name="words" label=${say('signing.words')} hint=${say('signing.words.hint')} value=${words} onChange=${setWords} />
    <${MainAction} name="countersign" label=${say('signing.run')} under=${file ? '' : say('signing.wants_key')} disabled=${!file} run=${run} />
  <//>`
}

/** @param {{job: string, number: number, read: () => Promise<void>}} props */
function OtherProgram({ job, number, read }) {
  const [file, setFile] = useState(/** @type {File | null} */ (null))
  const run = async () => {
    if (!file) return
    const signed = new Blob([await bytesOf(file)], { type: 'application/pdf' })
    await tell('POST', `/api/jobs/${job}/reports/${number}/signed`, signed, file.size / SLOWEST)
    setFile(null)
    await read()
  }
  return html`<${Part} name=${say('signing.other_program')}>
    <p>${say('signing.other_program.what')}</p>
    <${FileChoice} name="signed-file" label=${say('signing.choose_signed')} accept=".pdf,application/pdf" file=${file} setFile=${setFile} />
    ${file && html`<${MainAction} plain name="bring-signed" label=${say('signing.bring')} run=${run} />`}
  <//>`
}

/** @param {{name: string, label: string, accept: string, file: File | null, setFile: (file: File | null) => void}} props */
function FileChoice({ name, label, accept, file, setFile }) {
  const input = useRef(/** @type {any} */ (null))
  return html`
    <input ref=${input} class="gone" tabindex="-1" aria-hidden="true" type="file" accept=${accept} data-name=${name} onChange=${(/** @type {any} */ event) => setFile(event.target.files[0] ?? null)} />
    <button type="button" class="press" data-name=${`choose-${name}`} onClick=${() => input.current?.click()}>${label}</button>
    ${file && html`<p class="big" data-name=${`chosen-${name}`}>${say('signing.chosen', { name: file.name, size: size(file.size) })}</p>`}`
}

/** @param {File} file @throws {Trouble} `signing.file_gone` where it was changed or moved since it was chosen */
async function bytesOf(file) {
  try {
    return new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new Trouble('signing.file_gone', { field: 'file', value: file.name })
  }
}

/** @param {Uint8Array} bytes */
function base64(bytes) {
  return btoa(String.fromCharCode(...bytes))
}
