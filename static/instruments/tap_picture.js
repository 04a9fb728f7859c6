// Three taps on a picture at its full resolution, under a loupe, with nudges for gloves.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Problem } from '../frame/problem.js'
import { photoUrl } from '../photo/read.js'

const ORDER = ['ridge_end', 'eave_end', 'screw']
const NUDGES = /** @type {[string, number, number][]} */ ([['up', 0, -1], ['down', 0, 1], ['back', -1, 0], ['on', 1, 0]])
const ARROWS = /** @type {Record<string, string>} */ ({ up: '↑', down: '↓', back: '←', on: '→' })
const LOUPE = 3

/** @param {{sha256: string, job: string, value: any, onChange: (taps: any) => any}} props */
export function TapPicture({ sha256, job, value, onChange }) {
  const [url, setUrl] = useState('')
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const [taps, setTaps] = useState(/** @type {Record<string, [number, number]>} */ (value ?? {}))
  const [at, setAt] = useState(ORDER.find((one) => !value?.[one]) ?? 'screw')
  const picture = useRef(/** @type {any} */ (null))
  useEffect(() => { photoUrl(sha256, job).then(setUrl, setFault) }, [sha256])
  const put = (/** @type {string} */ name, /** @type {[number, number]} */ point) => {
    const next = { ...taps, [name]: point }
    setTaps(next)
    onChange(ORDER.every((one) => next[one]) ? next : null)
  }
  const tapped = (/** @type {any} */ event) => {
    const box = picture.current.getBoundingClientRect()
    const x = Math.round((event.clientX - box.left) / box.width * picture.current.naturalWidth)
    const y = Math.round((event.clientY - box.top) / box.height * picture.current.naturalHeight)
    put(at, [x, y])
    setAt(ORDER.find((one) => one !== at && !taps[one]) ?? at)
  }
  const nudge = (/** @type {number} */ dx, /** @type {number} */ dy) => () => { if (taps[at]) put(at, [taps[at][0] + dx, taps[at][1] + dy]) }
  const share = (/** @type {[number, number]} */ point) => {
    const { naturalWidth: w = 1, naturalHeight: h = 1 } = picture.current ?? {}
    return { left: `${100 * point[0] / (w || 1)}%`, top: `${100 * point[1] / (h || 1)}%` }
  }
  return html`<div class="stack tapping">
    <p class="big" role="status">${say(`slot.tap.${at}`)}</p>
    <${Problem} fault=${fault} />
    <div class="tapped">
      ${url && html`<img ref=${picture} src=${url} alt=${say('slot.picture')} onClick=${tapped} data-name="tap-picture" onLoad=${() => setUrl((known) => known)} />`}
      ${ORDER.filter((one) => taps[one]).map((one) => html`<span key=${one} class=${'tap ' + one} style=${share(taps[one])} aria-hidden="true">${ORDER.indexOf(one) + 1}</span>`)}
    </div>
    ${taps[at] && html`<${Loupe} url=${url} point=${taps[at]} picture=${picture.current} />`}
    <div class="steps points">${ORDER.map((one) => html`<button type="button" class=${one === at ? 'press on' : 'press'} aria-pressed=${one === at} onClick=${() => setAt(one)} data-name=${'choose-' + one}>
      ${ORDER.indexOf(one) + 1} ${say(`slot.point.${one}`)} ${taps[one] ? '✓' : '○'}</button>`)}</div>
    ${taps[at] && html`<div class="nudges">${NUDGES.map(([name, dx, dy]) => html`<button type="button" class="press" style=${{ gridArea: name }} onClick=${nudge(dx, dy)} data-name=${'nudge-' + name} aria-label=${say(`slot.nudge.${name}`)}>${ARROWS[name]}</button>`)}</div>`}
  </div>`
}

/** The picture around a tap, three screen pixels to each of its own. @param {{url: string, point: [number, number], picture: any}} props */
function Loupe({ url, point, picture }) {
  if (!picture) return null
  const style = {
    backgroundImage: `url(${url})`, backgroundSize: `${picture.naturalWidth * LOUPE}px ${picture.naturalHeight * LOUPE}px`,
    backgroundPosition: `calc(50% + ${(picture.naturalWidth / 2 - point[0]) * LOUPE}px) calc(50% + ${(picture.naturalHeight / 2 - point[1]) * LOUPE}px)`,
  }
  return html`<div class="loupe" style=${style} aria-hidden="true"><span class="cross"></span></div>`
}
