// A share as a bar on a scale of its own width: what is open is hatched, what is settled is full, a mark tells the sum so
// far. All in percent of the width, so that marks keep their shape at any size.

import { html } from '../frame/view.js'

/** @param {{share: number, open: number, cumulative: number}} props shares of one; `open` of the bar itself */
export function Bar({ share, open, cumulative }) {
  const whole = 100 * share, hatched = whole * open
  return html`<svg class="trend-bar" width="100%" height="35" aria-hidden="true" focusable="false">
    <rect class="trend-ground" x="0" y="4" width="100%" height="18" />
    <rect class="trend-full" x="0" y="4" width=${`${whole - hatched}%`} height="18" />
    <rect class="trend-open" x=${`${whole - hatched}%`} y="4" width=${`${hatched}%`} height="18" />
    <svg x=${`${100 * cumulative}%`} y="0"><path class="trend-sum" d="M0 2V26M-9 34L0 22L9 34Z" /></svg>
  </svg>`
}

/** The hatching, once for all that use it. */
export function Hatching() {
  return html`<svg class="trend-patterns" width="0" height="0" aria-hidden="true" focusable="false"><defs>
    <pattern id="trend-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="trend-hatch-ground" width="7" height="7" /><path class="trend-hatch-line" d="M0 0V7" /></pattern>
  </defs></svg>`
}
