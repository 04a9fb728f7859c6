// What a finding is called and where it is, in words.

import { known, pick, say } from '../words/say.js'
import { findItem } from '../checklist/items.js'
import { placeName, zoneName } from '../roof/names.js'
import { shown } from '../frame/amount.js'
import { path } from '../frame/route.js'
import { recorded } from '../walk/verdict.js'
import { because, figures } from '../walk/working.js'

/** The item it failed, or null for one opened by hand. @param {any[]} definitions @param {any} finding @returns {{definition: any, item: any}} */
export function askedBy(definitions, finding) {
  const definition = definitions.find((one) => one.digest === finding.definition) ?? null // two checklists may name an item alike
  return { definition, item: finding.item ? findItem(definition, finding.item) : null }
}

/** @param {any[]} definitions @param {any} finding @returns {string} */
export function title(definitions, finding) {
  const { item } = askedBy(definitions, finding)
  return pick(item?.question) ?? (finding.source === 'hand' ? finding.found : finding.item) ?? '—'
}

/** @param {any} record @param {any} finding @returns {string} `Quay slope · panel 12 · 7.5 ft from the low end · edge` */
export function where(record, finding) {
  const station = finding.station && record.stations[finding.station]
  if (station) return placeName(record, station)
  if (!finding.area) return say('walk.whole')
  return [record.areas[finding.area]?.name ?? '—', finding.panel && say('place.panel', { panel: finding.panel }),
    finding.from_low_end && say('place.from_low_end', { distance: shown(finding.from_low_end) }), finding.zone && zoneName(finding.zone)].filter(Boolean).join(' · ')
}

/** The address of the place on the plan; of its walk where it has none. @param {string} job @param {any} record @param {any} finding @returns {string | null} */
export function onPlan(job, record, finding) {
  const station = finding.station && record.stations[finding.station]
  const area = finding.area ?? station?.area
  const panel = finding.panel ?? station?.panel
  if (area && record.areas[area]) return path('job', job, 'plan', area, ...(panel ? [panel] : []))
  return null
}

/** What somebody wrote beside the answer that opened it. @param {any} finding @returns {string} '' for one opened by hand: its words are its title */
export function note(finding) {
  return finding.source === 'hand' ? '' : finding.found?.note ?? ''
}

/** What a rule said when it failed: why, then its numbers, a line each. @param {any} finding @returns {string[]} */
export function measured(finding) {
  if (finding.source === 'hand' || !finding.required?.rule) return []
  const answer = recorded({ result: 'fail', ...finding.required })
  return [because(answer.reason), figures(answer).map(({ word, text }) => `${word}: ${text}`).join(' · ')].filter(Boolean)
}

/** What the record found wrong, in words. @param {string} code @returns {string} */
export function problem(code) {
  return known(`finding.problem.${code}`) ? say(`finding.problem.${code}`) : code
}
