// What was on the roof, for the eye: counts, people, days, draws, reports, and the photos by place.

import { known, language, say } from '../words/say.js'
import { element } from './element.js'
import { reportIn } from './names.js'
import { roofOf } from './roof.js'
import { pictures } from './pictures.js'

/** @typedef {import('./check.js').Found} Found */
/** @typedef {ReturnType<typeof roofOf>} Roof */

/** @param {Found} found @param {import('./package.js').Files} files @param {Record<string, any>} sheet of the package */
export function seen(found, files, sheet) {
  const roof = roofOf(found, files)
  const reports = [...files.keys()].filter(reportIn)
  return [
    element('section', null, element('h2', null, say('verify_page.roof.title')),
      roof.job.invented && element('p.note', null, element('strong', null, say('verify_page.roof.invented'))),
      facts(roof, sheet), figures({ ...roof.counts, reports: reports.length }), element('p.hint', null, say('verify_page.roof.note'))),
    element('section', null, element('h2', null, say('verify_page.people.title')), rows(roof.people.map(recorder))),
    element('section', null, element('h2', null, say('verify_page.days.title')), rows(roof.days.map(day))),
    element('section', null, element('h2', null, say('verify_page.lots.title')),
      found.drawn.length ? rows(found.drawn.map((one) => lot(one, roof))) : element('p', null, say('verify_page.lots.none'))),
    element('section', null, element('h2', null, say('verify_page.reports.title')),
      reports.length ? rows(reports.map((name) => report(name, found.hashes))) : element('p', null, say('verify_page.reports.none'))),
    element('section', null, element('h2', null, say('verify_page.photos.title')), ...pictures(roof.places, files)),
  ]
}

/** @param {Roof} roof @param {Record<string, any>} sheet */
function facts({ job }, sheet) {
  const parties = (Array.isArray(job.parties) ? job.parties : []).map((/** @type {any} */ one) => `${one?.name} (${one?.role})`).join('; ')
  const told = { job: job.name, place: job.place, parties, made: typeof sheet.made === 'string' ? date(sheet.made) : '' }
  return element('dl.facts', null, ...Object.entries(told).filter(([, value]) => value).map(([key, value]) => element('div', null,
    element('dt', null, say(`verify_page.roof.${key}`)), element('dd', { dir: 'auto' }, String(value)))))
}

/** @param {Record<string, number>} counts */
function figures(counts) {
  const order = ['entries', 'people', 'days', 'walks', 'stations', 'answers', 'failed', 'photos', 'reports']
  return element('dl.figures', null, ...order.map((key) => element('div', null,
    element('dt', null, say(`verify_page.roof.${key}`)), element('dd', { 'data-name': `count-${key}` }, counts[key].toLocaleString(language())))))
}

/** @param {Node[][]} lines */
const rows = (lines) => element('ul.rows', null, ...lines.map((line) => element('li', null, ...line)))

/** @param {Roof['people'][number]} one */
function recorder({ name, role, phones, entries, first, last }) {
  const said = known(`role.${role}`) ? say(`role.${role}`) : role
  return [
    element('strong', { dir: 'auto' }, name),
    element('span', null, say('verify_page.people.line', { role: said, phones: phones.join(', '), n: entries })),
    element('div.hint', null, say('verify_page.people.span', { first: date(first), last: date(last) })),
  ]
}

/** @param {Roof['days'][number]} one */
function day({ day: on, people, entries, photos }) {
  return [element('strong', null, date(on)), element('span', null, say('verify_page.days.line', { n: entries, photos })), element('div.hint', { dir: 'auto' }, people.join(', '))]
}

/** @param {Found['drawn'][number]} one @param {Roof} roof */
function lot({ day: on, purpose, crew, by, size, drawn }, { areas, nameOf }) {
  const several = new Set(drawn.map(({ area }) => area)).size > 1
  const what = known(`verify_page.lots.${purpose}`) && say(`verify_page.lots.${purpose}`)
  const head = [date(on), what, crew && say('verify_page.lots.crew', { crew }), nameOf(by), several ? '' : areas.get(drawn[0]?.area) ?? '']
  return [
    element('strong', { dir: 'auto' }, head.filter(Boolean).join(' · ')),
    element('div.hint', null, say('verify_page.lots.line', { size })),
    element('ol.drawn', null, ...drawn.map(({ area, panel }) => element('li', null, several ? `${areas.get(area) ?? area} ${panel}` : String(panel)))),
  ]
}

/** @param {string} name @param {import('./bag.js').Hashes} hashes */
function report(name, hashes) {
  return [element('strong', null, name.slice('data/reports/'.length)), element('code', null, hashes.get(name) ?? '')]
}

/** A day, or a moment, as this language writes it; as it stands where it is none. @param {string} text */
function date(text) {
  const on = new Date(text.length === 10 ? `${text}T12:00:00Z` : text)
  if (Number.isNaN(on.getTime())) return text
  return text.length === 10
    ? on.toLocaleDateString(language(), { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' })
    : on.toLocaleString(language(), { dateStyle: 'medium', timeStyle: 'short' })
}
