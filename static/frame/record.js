// A job's record as it stands on this phone, read again whenever something was kept or arrived.

import { useEffect, useState } from './view.js'
import { definitionsOf, jobRecord, seesPart } from '../record/load.js'

/** @typedef {{record: any, definitions: any[], fault: any, part: boolean}} Known `part`: not the whole job */

/** @param {string} job @returns {Known} `record` is null while it loads */
export function useRecord(job) {
  const [known, setKnown] = useState(/** @type {Known & {job: string}} */ ({ job: '', record: null, definitions: [], fault: null, part: false }))
  useEffect(() => {
    let turn = 0
    const read = async () => {
      const mine = ++turn
      try {
        const record = await jobRecord(job)
        const definitions = await definitionsOf(job)
        const part = await seesPart(job)
        if (mine === turn) setKnown({ job, record, definitions, fault: null, part })
      } catch (fault) {
        if (mine === turn) setKnown((/** @type {any} */ old) => ({ ...old, fault }))
      }
    }
    read()
    addEventListener('seamwalk:kept', read)
    addEventListener('seamwalk:sync', read)
    return () => {
      turn = Infinity
      removeEventListener('seamwalk:kept', read)
      removeEventListener('seamwalk:sync', read)
    }
  }, [job])
  return known.job === job ? known : { record: null, definitions: [], fault: known.fault, part: false }
}
