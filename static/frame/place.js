// The place a person was at comes back after a kill: the app opened cold goes on there.

import { useEffect, useRef } from './view.js'
import { readMeta, writeMeta } from '../storage/meta.js'

const NOT_KEPT = ['sign-in', 'who', 'join']

/** @param {any} person @param {string[]} route */
export function usePlace(person, route) {
  const restored = useRef('')
  const here = route.join('/')
  useEffect(() => {
    if (!person) return
    if (restored.current !== person.id) {
      restored.current = person.id
      if (!here) {
        readMeta(['place', person.id]).then((/** @type {string | undefined} */ kept) => {
          if (kept && location.hash.replace(/^#\/?/, '') === '') location.hash = kept
        })
        return
      }
    }
    if (!NOT_KEPT.includes(route[0])) writeMeta(['place', person.id], location.hash)
  }, [person?.id, here])
}
