// The photos by place, a handful at a time: a job has hundreds, and each is as large as the camera made it.

import { known, say } from '../words/say.js'
import { element } from './element.js'

/** @typedef {import('./roof.js').Photo} Photo */
/** @typedef {import('./package.js').Files} Files */

const AT_ONCE = 24
// Where only the name tells: a zip keeps no types.
const TYPES = { jpg: 'image/jpeg', png: 'image/png', webp: 'image/webp', heic: 'image/heic' }

/** @param {import('./roof.js').Place[]} places @param {Files} files */
export function pictures(places, files) {
  if (!places.length) return [element('p', null, say('verify_page.photos.none'))]
  return places.map(({ area, photos }) => {
    const place = area || say('verify_page.photos.nowhere')
    const shelf = element('div.photos')
    const more = element('button', { type: 'button', 'data-name': 'more-photos', click: () => show() })
    const inside = element('div.inside.stack', null, shelf, more)
    let shown = 0
    const show = () => {
      shelf.append(...photos.slice(shown, shown + AT_ONCE).map((one) => picture(one, place, files)))
      shown = Math.min(photos.length, shown + AT_ONCE)
      more.textContent = say('verify_page.photos.more', { n: photos.length - shown })
      more.hidden = shown === photos.length
    }
    return element('details', { 'data-name': 'place', toggle: () => shown || show() },
      element('summary', null, element('span.sign', { 'aria-hidden': 'true' }, String(photos.length)), element('span.name', { dir: 'auto' }, place),
        element('span.state', null, `${say('verify_page.roof.photos')}: ${photos.length}`)), inside)
  })
}

/** @param {Photo} photo @param {string} place @param {Files} files */
function picture({ sha256, file, sound, panel, distance, role, at, by }, place, files) {
  const where = [
    panel === null ? '' : say('verify_page.photos.panel', { panel }),
    distance && say('verify_page.photos.at', { distance }),
    known(`verify_page.photos.role.${role}`) ? say(`verify_page.photos.role.${role}`) : role,
  ].filter(Boolean).join(' · ')
  const caption = element('figcaption', null, element('strong', { dir: 'auto' }, where), element('br'),
    element('span', { dir: 'auto' }, `${at.slice(0, 16).replace('T', ' ')} · ${by}`), element('br'), element('code.short', { 'aria-hidden': 'true' }, `${sha256.slice(0, 16)}…`), element('code.whole', null, sha256))
  const blob = file && files.get(file)
  if (!file || !blob || !sound) return element('figure', null, element('p.note', null, say(file ? 'verify_page.photos.changed' : 'verify_page.photos.missing')), caption)
  const type = TYPES[/** @type {'jpg'} */ (file.slice(file.lastIndexOf('.') + 1))]
  const url = URL.createObjectURL(blob.slice(0, blob.size, type))
  const image = element('img', { src: url, alt: say('verify_page.photos.alt', { place: `${place} · ${where}` }), loading: 'lazy', decoding: 'async' })
  const figure = element('figure')
  const press = element('button', { type: 'button', 'data-name': 'photo', 'aria-expanded': 'false', click: () => {
    press.setAttribute('aria-expanded', String(figure.classList.toggle('large')))
  } }, image)
  image.addEventListener('error', () => press.replaceWith(element('p.note', null, say('verify_page.photos.unshown'))))
  figure.append(press, caption)
  return figure
}
