// While a job's record is read, and when an address leads nowhere.

import { html } from './view.js'
import { say } from '../words/say.js'
import { path } from './route.js'
import { Problem } from './problem.js'
import { Screen } from './screen.js'

/** @param {{fault: any}} props */
export function Opening({ fault }) {
  return html`<${Screen} title=${say('opening')} back=${path()} backTo=${say('jobs')}><${Problem} fault=${fault} /><//>`
}

export function Lost() {
  return html`<${Screen} title=${say('lost')} back=${path()} backTo=${say('jobs')}><p>${say('lost.way_out')}</p><//>`
}
