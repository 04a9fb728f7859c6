// What a person has in hand on the screen that stands: typed, drawn, picked or being kept, and in no draft yet. The next
// build of the app waits for it, as it waits for drafts.

const TOUCHES = ['input', 'change', 'pointerdown']

let touched = false

/** Listen; call once at start. */
export function startInHand() {
  for (const name of TOUCHES) addEventListener(name, touch, { capture: true, passive: true })
  addEventListener('hashchange', () => { touched = false })
}

/** Has anything been put into this screen since it was opened? */
export function inHand() {
  return touched
}

/** @param {Event} event a finger counts only where it draws: presses that lead on end with another screen */
function touch(event) {
  if (event.type !== 'pointerdown' || event.target instanceof HTMLCanvasElement || event.target instanceof SVGElement) touched = true
}
