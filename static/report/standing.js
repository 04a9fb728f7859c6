// Whether a report holds, in a mark and a word: a list without it would let two versions pass for one.

import { say } from '../words/say.js'

/** @param {any} one a report of the list @returns {{mark: string, words: string, state: 'holds' | 'draft' | 'superseded' | 'lost'}} */
export function standing(one) {
  if (one.size === null) return { mark: '✕', words: say('reports.lost'), state: 'lost' }
  if (one.superseded_by) return { mark: '‖', words: say('reports.superseded', { n: one.superseded_by }), state: 'superseded' }
  if (one.final === false) return { mark: '▲', words: say('reports.draft', { n: one.missing }), state: 'draft' }
  return { mark: '✓', words: say('reports.holds'), state: 'holds' }
}
