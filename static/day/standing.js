// Where a lot stands, put together from what the record says of it. Nothing is drawn and nothing is judged here.

/** Lots of work still going on, this person's crew first, then the newest. @param {any} record @param {any} person @returns {any[]} */
export function openLots(record, person) {
  return dayLots(record).filter((lot) => !lot.closed).sort((a, b) => Number(b.by === person.id) - Number(a.by === person.id) || newest(a, b))
}

/** Lots whose day is over, newest first. @param {any} record @returns {any[]} */
export function closedLots(record) {
  return dayLots(record).filter((lot) => lot.closed).sort(newest)
}

/** An extension is looked at with the lot it extends. @param {any} record @returns {any[]} */
function dayLots(record) {
  return Object.values(record.lots ?? {}).filter((/** @type {any} */ lot) => lot.purpose === 'work' && !lot.extends)
}

/** @param {any} a @param {any} b */
const newest = (a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : a.at < b.at ? 1 : -1)

/** What was put right of a lot, drawn anew, oldest first. @param {any} record @param {any} lot @returns {any[]} */
export function reworked(record, lot) {
  return Object.values(record.lots ?? {}).filter((/** @type {any} */ one) => one.purpose === 'rework' && one.reworks === lot.id).sort((a, b) => newest(b, a))
}

/** A lot of work speaks of one area. @param {any} lot @returns {string} */
export function areaOf(lot) {
  return lot.population[0]?.area ?? ''
}

/** The lot and what extends it. @param {any} record @param {any} lot @returns {any[]} */
export function whole(record, lot) {
  return [lot, ...(lot.extensions ?? []).map((/** @type {string} */ id) => record.lots[id])].filter(Boolean)
}

/** The last panel planned, extensions and all. @param {any} record @param {any} lot @returns {number} */
export function plannedTo(record, lot) {
  return Math.max(...whole(record, lot).flatMap((one) => one.population.map((/** @type {any} */ row) => row.to)))
}

/** Drawn panels that may be shown, lowest number first. @param {any} record @param {any} lot @returns {any[]} */
export function revealed(record, lot) {
  return whole(record, lot).flatMap((one) => one.drawn ?? []).filter((one) => one.state !== 'sealed').sort((a, b) => a.panel - b.panel)
}

/** @param {any} record @param {any} lot @returns {number} stops drawn in all */
export function stopsDrawn(record, lot) {
  return whole(record, lot).reduce((sum, one) => sum + (one.drawn ?? []).length, 0)
}

/**
 * What is next: `hold` (a leg waits for its release), `stop` (a drawn panel's leg is open), `night`, `go` or `start`.
 * @param {any} record @param {any} lot
 * @returns {{state: 'hold' | 'stop' | 'go' | 'start', held: any, due: any, next: any, ahead: any}} `held`: the lowest open
 *   hold; `due`, `next`: drawn panels; `ahead`: the lowest hold of a panel not set yet
 */
export function standing(record, lot) {
  const drawn = revealed(record, lot)
  const held = lot.holds.find((/** @type {any} */ one) => one.state === 'open') ?? null
  const due = drawn.find((one) => one.state === 'due' || (one.state === 'part' && one.panel === lot.open_panel)) ?? null
  const next = drawn.find((one) => one.state === 'next') ?? null
  const ahead = lot.holds.find((/** @type {any} */ one) => one.state === 'ahead') ?? null
  const state = held ? 'hold' : due ? 'stop' : lot.placed_to === null ? 'start' : 'go'
  return { state, held, due, next, ahead }
}

/** Panels whose hold a mark up to `to` would go over. @param {any} lot @param {number} to @returns {number[]} */
export function goneOver(lot, to) {
  const waiting = lot.holds.filter((/** @type {any} */ one) => ['open', 'ahead'].includes(one.state) && one.panel < to)
  return [...new Set(/** @type {number[]} */ (waiting.map((/** @type {any} */ one) => one.panel)))].sort((a, b) => a - b)
}

/** The next panel to be set. @param {any} lot @returns {number} */
export function nextPanel(lot) {
  return (lot.placed_to ?? lot.population[0].from - 1) + 1
}
