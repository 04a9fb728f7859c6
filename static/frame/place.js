// The place a person was at comes back after a kill: the app opened cold goes on there.

import { useEffect, useRef } from './view.js'
import { loadDraft, saveDraft } from '../storage/drafts.js'

const NOT_KEPT = ['sign-in', 'who']

/** @param {any} person @param {string[]} route */
export function usePlace(person, route) {
  const restored = useRef('')
  const here = route.join('/')
  useEffect(() => {
    if (!person) return
    if (restored.current !== person.id) {
      restored.current = person.id
      if (!here) {
        loadDraft(person.id, 'place').then((/** @type {any} */ kept) => {
          if (kept?.hash && location.hash.replace(/^#\/?/, '') === '') location.hash = kept.hash
        })
        return
      }
    }
    if (!NOT_KEPT.includes(route[0])) saveDraft(person.id, 'place', { hash: location.hash })
  }, [person?.id, here])
}
