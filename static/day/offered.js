// Ten minutes a drawn panel waits for whoever looks. After that the crew may go on, and what happened is said as it was.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { enter } from '../frame/enter.js'
import { MainAction } from '../frame/main_action.js'

const WAITS = 10 * 60_000 // ms, common practice, no published source
const TICK = 5_000

/** When this panel's leg was opened: its first mark. @param {any} record @param {any} lot @param {number} panel @returns {number | null} milliseconds */
export function openedAt(record, lot, panel) {
  const ids = [lot.id, ...(lot.extensions ?? [])]
  const times = Object.values(record.marks ?? {}).filter((/** @type {any} */ mark) => ids.includes(mark.lot) && mark.to >= panel).map((/** @type {any} */ mark) => Date.parse(mark.at))
  return times.length ? Math.min(...times) : null
}

/** @param {{job: string, record: any, lot: any, area: string, panel: number, done: () => any}} props `done`: once it is kept */
export function Offered({ job, record, lot, area, panel, done }) {
  const [now, setNow] = useState(Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), TICK)
    return () => clearInterval(timer)
  }, [])
  const since = openedAt(record, lot, panel)
  const left = since === null ? 0 : Math.ceil((since + WAITS - now) / 60_000)
  const subject = `${lot.id}/${panel}`
  const nobody = async () => {
    await enter({ job, kind: 'stop', subject, replaces: record.stops?.[subject]?.heads ?? [], body: { lot: lot.id, area, panel, outcome: 'not_attended', note: '' } })
    done()
  }
  return html`<${MainAction} plain name="not-attended" label=${say('stop.nobody')} disabled=${left > 0} run=${nobody}
    under=${left > 0 ? say('stop.nobody.wait', { n: left }) : say('stop.nobody.under')} />`
}
