// Which findings a list shows: by state, area and crew, each only as far as the job has it. Pure; states are the record's.

import { plainCrew, sameCrew } from '../record/crew.js'

export const TO_DO = ['open', 'corrected']
const STATES = ['open', 'corrected', 'closed', 'conceded', 'withdrawn']

/** @typedef {{state: string, area: string, crew: string}} Wanted `to_do` and `all` are states too; '' for every area or crew */

/** The wish in an address: `['state', 'open', 'area', ID]`. @param {string[]} steps @returns {Wanted} */
export function wantedBy(steps) {
  const said = Object.fromEntries(steps.flatMap((step, at) => (at % 2 ? [] : [[step, steps[at + 1] ?? '']])))
  return { state: said.state ?? 'to_do', area: said.area ?? '', crew: said.crew ?? '' }
}

/** @param {Wanted} wanted @returns {string[]} steps of an address, what is usual left out */
export function stepsOf({ state, area, crew }) {
  return [...(state === 'to_do' ? [] : ['state', state]), ...(area ? ['area', area] : []), ...(crew ? ['crew', crew] : [])]
}

/** @param {any} finding @param {Wanted} wanted */
export function fits(finding, { state, area, crew }) {
  const inState = state === 'all' || (state === 'to_do' ? TO_DO.includes(finding.state) : finding.state === state)
  return inState && (!area || finding.area === area) && (!crew || sameCrew(finding.crew, crew))
}

/**
 * What may be chosen, with how many each would show beside the other two wishes.
 * @param {any[]} findings @param {Wanted} wanted
 * @returns {{states: {value: string, n: number}[], areas: {value: string, n: number}[], crews: {value: string, n: number}[]}}
 */
export function choices(findings, wanted) {
  const count = (/** @type {Partial<Wanted>} */ change) => findings.filter((one) => fits(one, { ...wanted, ...change })).length
  const states = ['to_do', ...STATES.filter((state) => findings.some((one) => one.state === state)), 'all']
  const areas = [...new Set(findings.map((one) => one.area).filter(Boolean))]
  return { states: states.map((value) => ({ value, n: count({ state: value }) })),
    areas: ['', ...areas].map((value) => ({ value, n: count({ area: value }) })),
    crews: ['', ...crewsOf(findings)].map((value) => ({ value, n: count({ crew: value }) })) }
}

/** The crews of these findings, each once, as first written. @param {any[]} findings @returns {string[]} */
export function crewsOf(findings) {
  return onceEach(findings.map((one) => one.crew))
}

/** @param {(string | null | undefined)[]} names @returns {string[]} sorted, without blanks and doubles */
export function onceEach(names) {
  const found = new Map()
  for (const name of names) if (plainCrew(name) && !found.has(plainCrew(name))) found.set(plainCrew(name), (name ?? '').trim())
  return [...found.values()].sort((a, b) => a.localeCompare(b, undefined, { numeric: true }))
}
