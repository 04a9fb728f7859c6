// Which areas of a job somebody sees whole.

import { useEffect, useState } from './view.js'
import { areasGiven } from '../record/load.js'

/** Null for every one. Of another, drawn just now perhaps, what other firms recorded there is not shown.
 * @param {string} job @returns {string[] | null} */
export function useAreasGiven(job) {
  const [given, setGiven] = useState(/** @type {string[] | null} */ (null))
  useEffect(() => { areasGiven(job).then(setGiven, () => {}) }, [job])
  return given
}
