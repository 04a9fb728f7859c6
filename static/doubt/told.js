// A doubt in words. What is doubtful is the record's answer; here it only gets names.

import { known, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { shown } from '../frame/amount.js'
import { signer } from '../frame/signer.js'

const COUNTED = /** @type {Record<string, string>} */ ({ fork: 'both', gap: 'missing', several_keys: 'kids' })
const OPENS = /** @type {Record<string, string>} */ ({ area: 'area', assembly: 'approved', fit: 'fit', walk: 'walk', station: 'station', lot: 'lot', finding: 'finding' })
const THINGS = /** @type {Record<string, string>} */ ({ area: 'areas', fit: 'areas', assembly: 'assemblies', walk: 'walks', lot: 'lots' })

/** @param {any} record @param {import('../frame/people.js').People} people @param {any} doubt @param {'what' | 'means' | 'do'} part */
export function told(record, people, doubt, part) {
  const { facts } = doubt
  const key = `doubt.${doubt.code}.${part}`
  return known(key) ? say(key, {
    ...facts, who: names(people, doubt.by), n: facts[COUNTED[doubt.code]] ?? doubt.n, apart: span(facts.minutes ?? 0),
    range: facts.low === facts.high ? facts.low : `${facts.low}–${facts.high}`, thing: thing(record, facts), place: place(record, facts),
  }) : say(`doubt.other.${part}`, { code: doubt.code, n: doubt.n })
}

/** @param {import('../frame/people.js').People} people @param {string[]} by */
export function names(people, by) {
  const all = by.map((id) => signer(people, { by: id }) || say('doubt.nobody'))
  return all.length ? [...new Set(all)].join(say('doubt.and')) : say('doubt.nobody')
}

/** `192` minutes as people say it. @param {number} minutes */
function span(minutes) {
  if (minutes < 60) return say('doubt.span.minutes', { n: minutes })
  if (minutes < 2880) return say('doubt.span.hours', { h: Math.floor(minutes / 60), m: minutes % 60 })
  return minutes < 1051200 ? say('doubt.span.days', { n: Math.round(minutes / 1440) }) : say('doubt.span.years', { n: Math.round(minutes / 525960) })
}

/** @param {any} record @param {any} facts of versions */
function thing(record, { kind, other }) {
  const name = record[THINGS[kind]]?.[other]?.name ?? (kind === 'job' ? record.job?.name : '')
  return [say(`kind.${kind}`), name].filter(Boolean).join(' · ')
}

/** @param {any} record @param {any} facts of a place seen differently */
function place(record, { area, panel }) {
  return say('doubt.panel', { area: record.areas[area]?.name ?? '—', panel })
}

/** In what a version differs, named and short; what has no name here is told as one. @param {[string, any][]} says @returns {[string, string][]} */
export function said(says) {
  const named = says.filter(([member]) => known(`doubt.member.${member}`))
  const rows = named.map(([member, value]) => [say(`doubt.member.${member}`), value === null ? say('doubt.otherwise') : value.unit ? shown(value) : String(value)])
  if (named.length < says.length) rows.push([say('doubt.member'), say('doubt.otherwise')])
  return /** @type {[string, string][]} */ (rows)
}

/** The screen of what an entry speaks of. @param {string} job @param {string[] | null} about */
export function opened(job, about) {
  return about && OPENS[about[0]] ? path('job', job, OPENS[about[0]], about[1]) : null
}
