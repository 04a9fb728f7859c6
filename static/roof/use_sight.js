// Moving over a plan: by buttons, by dragging, by two taps, by two fingers. None of them is the only way.

import { useEffect, useRef, useState } from '../frame/view.js'
import { closer, fitted, kept, shifted } from './sight.js'

const MOST = 60 // times closer than the whole roof
const TWICE = 350 // ms between the taps of a double tap
const STILL = 8 // px: less is a tap

/**
 * @param {{box: number[], width: number, height: number, rim: number, onTap: (px: number, py: number, twice: boolean) => any}} props `box`: west, south, east, north of all
 */
export function useSight({ box, width, height, rim, onTap }) {
  const whole = fitted(box, width, height, rim)
  const [told, setSight] = useState(/** @type {any} */ (null))
  const sight = told ?? whole
  const mover = useRef(/** @type {any} */ (null))
  const hand = useRef(/** @type {any} */ ({ down: new Map(), moved: [0, 0], last: 0 }))
  useEffect(() => setSight(null), [width, box.join()])
  const put = (/** @type {any} */ next) => setSight(next && kept(next, box, width, height))
  const zoom = (/** @type {number} */ by, /** @type {[number, number]} */ about = [width / 2, height / 2]) => {
    const next = closer(sight, by, about, whole.scale, whole.scale * MOST)
    put(next.scale <= whole.scale * 1.01 ? null : next)
  }
  const move = (/** @type {number} */ dx, /** @type {number} */ dy) => put(shifted(sight, dx * width, dy * height))
  const look = (/** @type {number[]} */ at) => put(fitted(at, width, height, rim))
  const here = (/** @type {any} */ event) => {
    const seen = event.currentTarget.getBoundingClientRect()
    return [event.clientX - seen.left - event.currentTarget.clientLeft, event.clientY - seen.top - event.currentTarget.clientTop]
  }
  const down = (/** @type {any} */ event) => {
    const { current } = hand
    current.down.set(event.pointerId, here(event))
    current.start = new Map(current.down)
    current.far = current.down.size > 1 || false
  }
  const drag = (/** @type {any} */ event) => {
    const { current } = hand
    if (!current.down.has(event.pointerId)) return
    current.down.set(event.pointerId, here(event))
    const [a, b] = [...current.down.keys()]
    const from = current.start.get(a), to = current.down.get(a)
    if (!current.far && Math.hypot(to[0] - from[0], to[1] - from[1]) < STILL) return
    if (!current.far) event.currentTarget.setPointerCapture(event.pointerId)
    current.far = true
    const second = b === undefined ? null : [current.start.get(b), current.down.get(b)]
    const by = second ? Math.hypot(to[0] - second[1][0], to[1] - second[1][1]) / (Math.hypot(from[0] - second[0][0], from[1] - second[0][1]) || 1) : 1
    current.shift = [to[0] - from[0] * by, to[1] - from[1] * by, by]
    // The picture as it is painted goes with the finger; the plan is drawn again when it rests.
    if (mover.current) mover.current.style.transform = `translate(${current.shift[0]}px, ${current.shift[1]}px) scale(${by})`
  }
  const up = (/** @type {any} */ event) => {
    const { current } = hand
    if (!current.down.has(event.pointerId)) return
    const at = here(event)
    current.down.delete(event.pointerId)
    if (current.far) {
      const [dx, dy, by] = current.shift ?? [0, 0, 1]
      if (mover.current) mover.current.style.transform = ''
      current.shift = null
      current.start = new Map(current.down)
      put({ scale: Math.min(Math.max(sight.scale * by, whole.scale), whole.scale * MOST), x: sight.x * by + dx, y: sight.y * by + dy })
      return
    }
    const twice = event.timeStamp - current.last < TWICE
    current.last = twice ? 0 : event.timeStamp
    onTap(at[0], at[1], twice)
  }
  const cancel = (/** @type {any} */ event) => {
    hand.current.down.delete(event.pointerId)
    hand.current.shift = null
    if (mover.current) mover.current.style.transform = ''
  }
  return { sight, whole: !told, mover, zoom, move, look, fit: () => setSight(null), on: { onPointerDown: down, onPointerMove: drag, onPointerUp: up, onPointerCancel: cancel } }
}
