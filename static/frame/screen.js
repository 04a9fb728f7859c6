// One screen: its title, which takes the focus when the screen opens, and the way back.

import { html, useEffect, useLayoutEffect, useRef } from './view.js'
import { language, say } from '../words/say.js'

/** @param {{title: string, over?: any, back?: string, backTo?: string, children?: any, wide?: boolean}} props */
export function Screen({ title, over, back, backTo, wide, children }) {
  const heading = useRef(/** @type {any} */ (null))
  const spoken = useRef('')
  // With the drawing, not after it: whoever prints the screen gets its name in the same language.
  useLayoutEffect(() => { document.title = `${title} · Seamwalk` }, [title, language()])
  useEffect(() => {
    const before = spoken.current
    spoken.current = language()
    if (before && before !== spoken.current) return // the same screen in other words: the person stays where they were
    scrollTo(0, 0)
    heading.current?.focus({ preventScroll: true })
  }, [title, language()])
  return html`<main class=${wide ? 'sheet wide' : 'sheet'}>
    ${back && html`<a class="press back" href=${back}><span aria-hidden="true">↑</span> ${backTo ?? say('back')}</a>`}
    <header class="title">
      ${over && html`<p class="over">${over}</p>`}
      <h1 tabindex="-1" ref=${heading}>${title}</h1>
    </header>
    ${children}
  </main>`
}

/** A part of a screen, ruled off, with its own name. @param {{name: string, children?: any, id?: string}} props */
export function Part({ name, children, id }) {
  return html`<section class="part" id=${id}><h2>${name}</h2>${children}</section>`
}
