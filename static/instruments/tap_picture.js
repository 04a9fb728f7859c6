// Taps on a picture at its full resolution, one named point after another, under a loupe, with nudges for gloves.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Problem } from '../frame/problem.js'
import { photoUrl } from '../photo/read.js'

const NUDGES = /** @type {[string, number, number][]} */ ([['up', 0, -1], ['down', 0, 1], ['back', -1, 0], ['on', 1, 0]])
const ARROWS = /** @type {Record<string, string>} */ ({ up: '↑', down: '↓', back: '←', on: '→' })
const LOUPE = 3

/** @param {{sha256: string, job: string, points: string[], value: any, onChange: (taps: any) => any}} props `onChange` of all points, or of null while one is missing */
export function TapPicture({ sha256, job, points, value, onChange }) {
  const [url, setUrl] = useState('')
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const [taps, setTaps] = useState(/** @type {Record<string, [number, number]>} */ (value ?? {}))
  const [at, setAt] = useState(points.find((one) => !value?.[one]) ?? points.at(-1) ?? '')
  const [last, setLast] = useState('')
  const [size, setSize] = useState([1, 1])
  const picture = useRef(/** @type {any} */ (null))
  useEffect(() => { photoUrl(sha256, job).then(setUrl, setFault) }, [sha256])
  const put = (/** @type {string} */ name, /** @type {[number, number]} */ point) => {
    const next = { ...taps, [name]: point }
    setTaps(next)
    onChange(points.every((one) => next[one]) ? next : null)
  }
  const tapped = (/** @type {any} */ event) => {
    const box = picture.current.getBoundingClientRect()
    const x = Math.round((event.clientX - box.left) / box.width * picture.current.naturalWidth)
    const y = Math.round((event.clientY - box.top) / box.height * picture.current.naturalHeight)
    put(at, [x, y])
    setLast(at)
    setAt(points.find((one) => one !== at && !taps[one]) ?? at)
  }
  const held = taps[at] ? at : last // what the loupe shows: the point chosen, else the one just tapped
  const nudge = (/** @type {number} */ dx, /** @type {number} */ dy) => () => put(held, [taps[held][0] + dx, taps[held][1] + dy])
  const share = (/** @type {[number, number]} */ point) => ({ left: `${100 * point[0] / size[0]}%`, top: `${100 * point[1] / size[1]}%` })
  return html`<div class="stack tapping">
    <p class="big" role="status">${say(`slot.tap.${at}`)}</p>
    <${Problem} fault=${fault} />
    <div class="tapped">
      ${url && html`<img ref=${picture} src=${url} alt=${say('slot.picture')} onClick=${tapped} data-name="tap-picture" onLoad=${() => setSize([picture.current.naturalWidth, picture.current.naturalHeight])} />`}
      ${points.filter((one) => taps[one]).map((one) => html`<span key=${one} class=${'tap ' + one} style=${share(taps[one])} aria-hidden="true">${points.indexOf(one) + 1}</span>`)}
    </div>
    ${taps[held] && html`<div class="stack"><p class="hint">${points.indexOf(held) + 1} ${say(`slot.point.${held}`)}</p><${Loupe} ...${{ url, point: taps[held], size }} /></div>`}
    <div class="steps points">${points.map((one) => html`<button type="button" key=${one} class=${one === at ? 'press on' : 'press'} aria-pressed=${one === at} onClick=${() => setAt(one)} data-name=${'choose-' + one}>
      ${points.indexOf(one) + 1} ${say(`slot.point.${one}`)} ${taps[one] ? '✓' : '○'}</button>`)}</div>
    ${taps[held] && html`<div class="nudges">${NUDGES.map(([name, dx, dy]) => html`<button type="button" class="press" style=${{ gridArea: name }} onClick=${nudge(dx, dy)} data-name=${'nudge-' + name} aria-label=${say(`slot.nudge.${name}`)}>${ARROWS[name]}</button>`)}</div>`}
  </div>`
}

/** The picture around a tap, three screen pixels to each of its own. @param {{url: string, point: [number, number], size: number[]}} props */
function Loupe({ url, point, size }) {
  const style = {
    backgroundImage: `url(${url})`, backgroundSize: `${size[0] * LOUPE}px ${size[1] * LOUPE}px`,
    backgroundPosition: `calc(50% + ${(size[0] / 2 - point[0]) * LOUPE}px) calc(50% + ${(size[1] / 2 - point[1]) * LOUPE}px)`,
  }
  return html`<div class="loupe" style=${style} aria-hidden="true"><span class="cross"></span></div>`
}
