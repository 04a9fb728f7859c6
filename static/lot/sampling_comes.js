// What a choice comes to in a small, a usual and a large lot: the rulebook says how many to look at.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { ask } from '../rules/ask.js'

const LOTS = [20, 40, 80] // panels of a crew's short, usual and long day

/** @param {{rule: string, inputs: (lot: number) => any, says: string}} props */
export function Comes({ rule, inputs, says }) {
  const [found, setFound] = useState(/** @type {any[]} */ ([]))
  const key = JSON.stringify(inputs(1))
  useEffect(() => {
    let here = true
    Promise.all(LOTS.map(async (lot) => ({ lot, ...(await ask({ call: 'judge', rule, inputs: inputs(lot) })).values })))
      .then((all) => { if (here) setFound(all) }, () => { if (here) setFound([]) })
    return () => { here = false }
  }, [rule, key])
  return html`<ul class="comes" data-name="comes">${found.map(({ lot, n, accept }) => html`<li key=${lot}>${say(says, { lot, n: n.value, accept: accept?.value ?? 0 })}</li>`)}</ul>`
}
