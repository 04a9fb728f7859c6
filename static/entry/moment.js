// Device wall time as entries carry it: 2026-11-25T16:40:05.120-05:00.

/** @param {Date} [date] @param {number} [offset] minutes east of UTC, the device's own by default */
export function moment(date = new Date(), offset = -date.getTimezoneOffset()) {
  const wall = new Date(date.getTime() + offset * 60000).toISOString().slice(0, -1)
  const minutes = Math.abs(offset)
  const two = (/** @type {number} */ number) => String(Math.floor(number)).padStart(2, '0')
  return `${wall}${offset < 0 ? '-' : '+'}${two(minutes / 60)}:${two(minutes % 60)}`
}
