// What the sending is doing, in a sentence.

import { useEffect, useState } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { status } from '../sync/engine.js'
import { age } from '../frame/age.js'

export function useSyncStatus() {
  const [now, setNow] = useState(/** @type {any} */ (null))
  useEffect(() => {
    const read = async () => setNow({ ...(await status()) })
    read()
    addEventListener('seamwalk:sync', read)
    return () => removeEventListener('seamwalk:sync', read)
  }, [])
  return sentence(now) // said anew when the language changes
}

/** @param {any} now what `status()` gives */
function sentence(now) {
  if (!now) return ''
  if (now.phase === 'waiting' && now.reason && known(now.reason)) return say(now.reason, now.facts)
  if (now.phase === 'idle' && now.refused > 0) return say('sync.idle_but_refused')
  return say(`sync.phase.${now.phase}`, { last: now.last ? age(now.last) : '' })
}
