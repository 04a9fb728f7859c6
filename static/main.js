// The app starts here: words first, then whoever holds the phone, then the screen the address names.

import { html, render, useEffect, useState } from './frame/view.js'
import { loadWords } from './words/say.js'
import { current } from './people/session.js'
import { startSync } from './sync/engine.js'
import { capable } from './shell/ready.js'
import { homeScreenFirst } from './shell/recording.js'
import { startShell } from './shell/start.js'
import { PutBackNotice } from './frame/put_back_notice.js'
import { useRoute } from './frame/route.js'
import { Strip } from './frame/strip.js'
import { usePlace } from './frame/place.js'
import { Barred } from './phone/barred.js'
import { Door } from './phone/door.js'
import { HomeScreenFirst } from './phone/home_screen_first.js'
import { Newer } from './phone/newer.js'
import { screenFor } from './screens.js'

function App() {
  const [person, setPerson] = useState(/** @type {any} */ (undefined))
  const [able, setAble] = useState(/** @type {any} */ (null))
  const [invented, setInvented] = useState(false)
  const [looking, setLooking] = useState(false)
  const [, speak] = useState(0)
  const route = useRoute()
  useEffect(() => {
    const who = () => current().then(setPerson, () => {}) // `able` says what is wrong with the storage
    const tried = (/** @type {any} */ { detail }) => {
      setAble(detail)
      if (detail.ok) who()
    }
    const words = () => speak((n) => n + 1)
    who()
    Promise.resolve(capable()).then(setAble)
    addEventListener('seamwalk:person', who)
    addEventListener('seamwalk:language', words)
    addEventListener('seamwalk:able', tried)
    return () => {
      removeEventListener('seamwalk:person', who)
      removeEventListener('seamwalk:language', words)
      removeEventListener('seamwalk:able', tried)
    }
  }, [])
  usePlace(person, route)
  if (able && !able.ok) return html`<${Barred} reason=${able.reason} />`
  if (person === undefined || able === null) return null
  if (!person && !looking && homeScreenFirst() && route[0] !== 'join') return html`<${HomeScreenFirst} look=${() => setLooking(true)} />`
  const open = person || ['sign-in', 'who', 'join'].includes(route[0])
  return html`<${Strip} person=${person} invented=${invented} />
    <${PutBackNotice} />
    ${able.newer && html`<${Newer} />`}
    ${open ? screenFor(route, person, setInvented) : html`<${Door} at=${route.join('/')} />`}`
}

await loadWords()
const place = /** @type {any} */ (document.getElementById('app'))
place.replaceChildren() // what stood there until the app came
render(html`<${App} />`, place)
startSync()
startShell()
