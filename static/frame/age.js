// How long ago something was, in words short enough for the strip.

import { say } from '../words/say.js'

/** @param {string | number | null} since ISO time or milliseconds @param {number} [now] milliseconds */
export function age(since, now = Date.now()) {
  if (since === null || since === undefined) return ''
  const minutes = Math.max(0, Math.floor((now - new Date(since).getTime()) / 60_000))
  if (minutes < 1) return say('age.now')
  if (minutes < 60) return say('age.minutes', { n: minutes })
  if (minutes < 48 * 60) return say('age.hours', { n: Math.floor(minutes / 60) })
  return say('age.days', { n: Math.floor(minutes / 1440) })
}

/** A recorded time as its writer's clock showed it. @param {string} at ISO 8601 with offset */
export function clock(at) {
  const found = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)/.exec(at ?? '')
  return found ? `${found[1]} ${found[2]}` : '—'
}
