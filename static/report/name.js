// How a report is called: by what it speaks of, as the phone's own record knows it.

import { pick, say } from '../words/say.js'
import { spelled } from '../frame/spelled.js'

/** @param {any} record @param {any[]} definitions @param {any} scope @returns {string} what it speaks of, in a few words; of the whole job empty */
export function about(record, definitions, scope) {
  const walk = record.walks[scope.walk]
  if (walk) return [pick(definitions.find((one) => one.digest === walk.definition)?.title) ?? '', spelled(walk.at), walk.crew].filter(Boolean).join(' · ')
  const lot = record.lots?.[scope.lot]
  if (lot) return [spelled(lot.day), ...lot.population.map((/** @type {any} */ row) => areaName(record, row.area))].join(' · ')
  if (scope.area) return say('reports.place', { area: areaName(record, scope.area), panel: scope.panel })
  return scope.kind === 'closeout' ? '' : say('reports.not_here')
}

/** @param {string} kind */
export const kindName = (kind) => say(`reports.kind.${kind}`)

/** @param {any} record @param {string} area */
const areaName = (record, area) => record.areas[area]?.name ?? area
