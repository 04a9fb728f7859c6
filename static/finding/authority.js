// The record's own table of who may say what, as the screens ask for it.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/** @typedef {import('./offers.js').Authority} Authority */

/** @returns {Authority | null} null while it is asked for */
export function useAuthority() {
  const [authority, setAuthority] = useState(/** @type {Authority | null} */ (null))
  useEffect(() => {
    let here = true
    ask({ call: 'authority' }).then((/** @type {Authority} */ one) => { if (here) setAuthority(one) }, () => {})
    return () => { here = false }
  }, [])
  return authority
}
