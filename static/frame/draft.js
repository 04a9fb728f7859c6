// What a person is in the middle of, saved at every change and found again after a kill.

import { useEffect, useRef, useState } from './view.js'
import { dropDraft, loadDraft, saveDraft } from '../storage/drafts.js'

/**
 * A draft that lives in the database.
 * @param {string} person @param {string} key @param {any} initial an object, or null while it is not known yet
 * @returns {[any, (patch: any) => Promise<void>, () => Promise<void>]} value (null while loading), change, drop
 */
export function useDraft(person, key, initial) {
  const [value, setValue] = useState(/** @type {any} */ (null))
  const latest = useRef(/** @type {any} */ (null))
  const ready = initial !== null
  useEffect(() => {
    let here = true
    latest.current = null
    setValue(null)
    if (ready) {
      loadDraft(person, key).then((/** @type {any} */ kept) => {
        if (!here) return
        latest.current = { ...initial, ...(kept ?? {}) }
        setValue(latest.current)
      })
    }
    return () => { here = false }
  }, [person, key, ready])
  const change = async (/** @type {any} */ patch) => {
    latest.current = { ...latest.current, ...(typeof patch === 'function' ? patch(latest.current) : patch) }
    setValue(latest.current)
    await saveDraft(person, key, latest.current)
  }
  const drop = async () => {
    await dropDraft(person, key)
    latest.current = { ...initial }
    setValue(latest.current)
  }
  return [value, change, drop]
}
