// What a plan lets through, as a roof that falls from its ridge: of a hundred lots with so many bad panels, so many are
// accepted. The rulebook gives every point; three of them stand in words below.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { ask } from '../rules/ask.js'
import { percent } from './name.js'

const WIDE = 320, TALL = 150, STEPS = 24
export const POINTS = /** @type {[string, string][]} */ ([['95', '●'], ['50', '■'], ['10', '◆']])

/** Curves asked for before, by plan. @type {Map<string, Promise<number[][]>>} */
const asked = new Map()

/** @param {{plan: {n: number, accept: number}, risk: Record<string, number>, name: string}} props */
export function Curve({ plan, risk, name }) {
  const reach = Math.min(1, Math.max(Number(risk['10']) * 1.25, 0.02))
  const [points, setPoints] = useState(/** @type {number[][] | null} */ (null))
  useEffect(() => {
    let here = true
    shares(plan, reach).then((found) => { if (here) setPoints(found) }).catch(() => {})
    return () => { here = false }
  }, [plan.n, plan.accept, reach])
  const x = (/** @type {number} */ share) => (share / reach) * WIDE
  const y = (/** @type {number} */ accepted) => TALL * (1 - accepted)
  const line = points?.map(([share, accepted]) => `${x(share).toFixed(1)},${y(accepted).toFixed(1)}`).join(' ')
  return html`<figure class="curve" data-name="curve" data-severity=${name} data-drawn=${Boolean(line)}>
    <figcaption>${say('curve.up')}</figcaption>
    <svg viewBox=${`-10 -12 ${WIDE + 20} ${TALL + 22}`} role="img" aria-label=${say('curve.label')}>
      ${line && html`<polygon class="curve-roof" points=${`0,${TALL} ${line} ${x(points?.at(-1)?.[0] ?? 0).toFixed(1)},${TALL}`} />
        ${points?.slice(1).map(([share, accepted]) => html`<line key=${share} class="curve-seam" x1=${x(share)} x2=${x(share)} y1=${TALL} y2=${y(accepted)} />`)}
        <polyline class="curve-line" points=${line} />`}
      <path class="curve-frame" d=${`M0 0V${TALL}H${WIDE}`} />
      ${POINTS.map(([chance]) => html`<${Point} key=${chance} chance=${chance} x=${x(Number(risk[chance]))} y=${y(Number(chance) / 100)} />`)}
    </svg>
    <p class="curve-across"><span>0</span><span>${say('curve.across')} →</span><span>${percent(reach)}</span></p>
  </figure>`
}

/** Its shape says which of the three it is. @param {{chance: string, x: number, y: number}} props */
function Point({ chance, x, y }) {
  const shape = chance === '95' ? html`<circle r="8" />` : chance === '50' ? html`<rect x="-7.5" y="-7.5" width="15" height="15" />` : html`<path d="M0-11L11 0 0 11-11 0Z" />`
  return html`<g class="curve-point" transform=${`translate(${x} ${y})`}><path class="curve-drop" d=${`M0 0V${TALL - y}`} />${shape}</g>`
}

/** Points of the curve from no bad panel on: the rulebook's `risk`, share by share. @param {{n: number, accept: number}} plan @param {number} reach */
function shares({ n, accept }, reach) {
  const key = `${n}/${accept}/${reach}`
  const known = asked.get(key)
  if (known) return known
  const all = Promise.all(Array.from({ length: STEPS + 1 }, async (_, at) => {
    const share = (reach * at) / STEPS
    const { values } = await ask({ call: 'judge', rule: 'risk', inputs: { n, accept, share: share.toFixed(6) } })
    return [share, Number(values.acceptance.value)]
  }))
  asked.set(key, all)
  all.catch(() => asked.delete(key))
  return all
}
