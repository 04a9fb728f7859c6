// How wide a drawing may be, and how large a person has the text: marks grow with it.

import { useLayoutEffect, useRef, useState } from './view.js'

const BASE = 18 // px of the root's text at its usual size

/** @returns {{box: any, room: number, large: number}} `box`: a ref for the element that the drawing stands in */
export function useRoom() {
  const box = useRef(/** @type {any} */ (null))
  const [{ room, large }, measured] = useState({ room: 320, large: 1 })
  useLayoutEffect(() => {
    const measure = () => measured((/** @type {any} */ old) => {
      const now = { room: box.current?.clientWidth || 320, large: parseFloat(getComputedStyle(document.documentElement).fontSize) / BASE }
      return now.room === old.room && now.large === old.large ? old : now
    })
    const watch = new ResizeObserver(measure)
    watch.observe(box.current)
    measure()
    return () => watch.disconnect()
  }, [])
  return { box, room, large }
}
