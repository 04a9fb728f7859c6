// The day as this phone's clock shows it: a date, as entries carry one.

/** @param {Date} [now] @returns {string} `2026-11-28` */
export function today(now = new Date()) {
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((one) => String(one).padStart(2, '0')).join('-')
}
