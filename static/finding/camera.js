// The phone's camera inside the page, where the phone has one and lets the page use it.

import { useEffect, useRef, useState } from '../frame/view.js'

const WISH = { audio: false, video: { facingMode: { ideal: 'environment' }, width: { ideal: 2560 }, height: { ideal: 1920 } } }
const QUALITY = 0.92 // of the JPEG: between here and 1 the files double and nobody sees a difference (from memory)

/** Whether this page can show a camera at all: the phone has one, and the page came over a safe way. */
export function canShow() {
  return typeof navigator.mediaDevices?.getUserMedia === 'function'
}

/**
 * @param {boolean} on whether the camera is to run
 * @returns {{video: any, state: '' | 'opening' | 'live' | 'refused', shoot: () => Promise<File>}} `video`: a ref for the element that shows it; it stops
 *   when `on` ends, the screen goes, or the phone is put away
 */
export function useCamera(on) {
  const video = useRef(/** @type {any} */ (null))
  const [state, setState] = useState(/** @type {'' | 'opening' | 'live' | 'refused'} */ (''))
  useEffect(() => {
    if (!on) return
    let here = true
    /** @type {MediaStream | null} */
    let stream = null
    const end = () => { stream?.getTracks().forEach((track) => track.stop()) }
    setState('opening')
    navigator.mediaDevices.getUserMedia(WISH).then(async (given) => {
      stream = given
      if (!here) return end()
      video.current.srcObject = given
      await video.current.play()
      if (here) setState('live')
    }).catch(() => { if (here) setState('refused') })
    return () => {
      here = false
      end()
      setState('')
    }
  }, [on])
  const shoot = async () => {
    const [width, height] = [video.current.videoWidth, video.current.videoHeight]
    const canvas = Object.assign(document.createElement('canvas'), { width, height })
    canvas.getContext('2d')?.drawImage(video.current, 0, 0, width, height)
    const bytes = await new Promise((taken) => canvas.toBlob(taken, 'image/jpeg', QUALITY))
    return new File([/** @type {any} */ (bytes)], 'camera.jpg', { type: 'image/jpeg' })
  }
  return { video, state, shoot }
}
