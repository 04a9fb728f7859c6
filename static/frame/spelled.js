// A time as people write it in the language they chose: `Nov 28, 2026, 5:05 PM`, `28 nov 2026, 17:05`.

import { language } from '../words/say.js'

const DAY = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d))?/

/** A recorded day, or a time as its writer's clock showed it. @param {string | null | undefined} at ISO 8601, perhaps with offset */
export function spelled(at) {
  const found = DAY.exec(at ?? '')
  if (!found) return '—'
  const [year, month, day, hour, minute] = found.slice(1).map((digits) => Number(digits ?? 0))
  return form(found[4] !== undefined, 'UTC').format(Date.UTC(year, month - 1, day, hour, minute))
}

/** A moment as this phone's clock would show it: the office and the roof need not be in one zone. @param {string | number} at ISO 8601, or milliseconds */
export function spelledHere(at) {
  const moment = new Date(at)
  return Number.isNaN(moment.getTime()) ? '—' : form(true).format(moment)
}

/** @param {boolean} timed @param {string} [timeZone] */
function form(timed, timeZone) {
  return new Intl.DateTimeFormat(language(), { dateStyle: 'medium', ...(timed && { timeStyle: 'short' }), timeZone })
}
