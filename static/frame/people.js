// The job's people as this phone knows them.

import { useEffect, useState } from './view.js'
import { jobs } from '../record/load.js'

/** @typedef {Record<string, {name: string, role: string}>} People person id -> who they are */

/** @param {string} job @returns {People} */
export function usePeople(job) {
  const [people, setPeople] = useState(/** @type {People} */ ({}))
  useEffect(() => {
    let here = true
    jobs().then((all) => {
      const members = all.find((one) => one.id === job)?.people ?? []
      if (here) setPeople(Object.fromEntries(members.map(({ id, name, role }) => [id, { name, role }])))
    }, () => {})
    return () => { here = false }
  }, [job])
  return people
}
