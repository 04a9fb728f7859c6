// Days counted on by the calendar. Pure.

/** How many days from today are offered. */
export const DAYS = [1, 3, 7]

/** @param {string} day `2026-11-28` @param {number} after @returns {string} `2026-11-29`; midday, so that no change of the clocks makes it another day */
export function dayAfter(day, after) {
  const [year, month, date] = day.split('-').map(Number)
  return new Date(Date.UTC(year, month - 1, date + after, 12)).toISOString().slice(0, 10)
}
