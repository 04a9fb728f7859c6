// The pictures of a list taken along for a roof without signal, in one press while there is some.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'
import { elsewhere, takeAlong } from '../photo/along.js'

/** @param {{job: string, findings: any[], drawAgain: () => any}} props `drawAgain`: called once they are here */
export function Along({ job, findings, drawAgain }) {
  const names = findings.flatMap((one) => [...one.photos, ...one.corrections.flatMap((/** @type {any} */ made) => made.photos)])
  const [missing, setMissing] = useState(/** @type {string[]} */ ([]))
  const look = () => elsewhere(names).then(setMissing, () => {})
  useEffect(() => {
    look()
    addEventListener('seamwalk:sync', look) // some come by themselves
    return () => removeEventListener('seamwalk:sync', look)
  }, [names.join()])
  if (missing.length === 0) return null
  const run = async () => {
    try {
      for (const name of missing) await takeAlong(name, job)
    } finally {
      await look()
      drawAgain()
    }
  }
  return html`<${MainAction} quiet name="take-along" label=${say('tomorrow.along', { n: missing.length })} run=${run} />`
}
