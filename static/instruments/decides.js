// Whether an instrument can decide at a place at all, from what the rulebook says of the window there. Pure.

/**
 * Of a slot, from the rulebook's answer to the word "middle", whose doubt is a third of the play and the metal's share.
 * @param {any} answer of a slot rule, or null
 * @returns {'' | 'no_window' | 'metal' | 'word'} what makes it undecidable; `metal`: the metal's temperature is too rough;
 *   `word`: one word is, which may still show a screw that is wrong
 */
export function decides(answer) {
  const { low, high, play, bound } = answer?.values ?? {}
  if (!low || !high || !play || !bound) return ''
  const half = (high.value - low.value) / 2
  if (half <= 0) return 'no_window'
  if (bound.value - play.value / 3 > half) return 'metal'
  return bound.value > half ? 'word' : ''
}
