// Who said something, by name: as the job's people are known on this phone, else as they signed.

import { useEffect, useState } from '../frame/view.js'
import { jobs } from '../record/load.js'

/** @param {string} job @returns {Record<string, string>} person id -> name */
export function useNames(job) {
  const [names, setNames] = useState(/** @type {Record<string, string>} */ ({}))
  useEffect(() => {
    let here = true
    jobs().then((all) => {
      const people = all.find((one) => one.id === job)?.people ?? []
      if (here) setNames(Object.fromEntries(people.map(({ id, name }) => [id, name])))
    }, () => {})
    return () => { here = false }
  }, [job])
  return names
}
