// A step of the trail as a sentence. A kind of step that this build does not know is shown as the office named it.

import { known, say } from '../words/say.js'
import { when } from './when.js'

/** @param {{what: string, facts: Record<string, any>}} step @param {Record<string, string>} names person id -> name */
export function stepWords({ what, facts }, names) {
  const key = `trail.${what}`
  if (!known(key)) return what
  return say(key, {
    name: '—', firm: '—', ...facts,
    role: facts.role ? say(`role.${facts.role}`) : '—',
    side: facts.side ? say(`side.${facts.side}`) : '—',
    until: facts.expires ? when(facts.expires) : '—',
    of: names[facts.of] ?? '—',
    key: String(facts.key ?? '').slice(0, 8),
  })
}
