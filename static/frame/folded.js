// A part of a long screen behind its heading, with how many things it holds. What somebody opened stays open on their way
// back to it, as long as the app runs.

import { html, useState } from './view.js'

/** @type {Set<string>} */
const opened = new Set()

/** @param {{id: string, name: string, n: number, children?: any}} props `id`: of the fold in its screen; `n`: things inside */
export function Folded({ id, name, n, children }) {
  const [open, setOpen] = useState(opened.has(id))
  const turned = (/** @type {any} */ event) => {
    setOpen(event.currentTarget.open)
    if (event.currentTarget.open) opened.add(id)
    else opened.delete(id)
  }
  return html`<section class="part folded"><details open=${open} onToggle=${turned}>
    <summary class="press" data-name=${`fold-${id}`}><h2>${name}</h2> <span class="count">${n}</span></summary>
    <div class="stack">${children}</div>
  </details></section>`
}
