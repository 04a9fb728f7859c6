// What one roof's lots can and cannot tell: by how long the crew's series is.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{lots: number}} props how many lots of the series are decided */
export function Isolated({ lots }) {
  const key = lots < 5 ? 'isolated' : lots < 10 ? 'series.five' : 'series.ten'
  return html`<p class="statement" data-name="isolated">${say(`lot.says.${key}`, { lots })}</p>`
}
