// What part of a plan is seen, and how large: px across = x + east × scale, px down = y − north × scale. Pure.

/** @typedef {{scale: number, x: number, y: number}} Sight */

/** @param {number[]} box west, south, east, north @param {number} width px @param {number} height px @param {number} rim px kept free around it @returns {Sight} */
export function fitted([west, south, east, north], width, height, rim) {
  const scale = Math.min(Math.max(width - 2 * rim, 1) / (east - west || 1), Math.max(height - 2 * rim, 1) / (north - south || 1))
  return { scale, x: width / 2 - ((west + east) / 2) * scale, y: height / 2 + ((south + north) / 2) * scale }
}

/** @param {Sight} sight @param {number} by @param {[number, number]} about the px that stays where it is @param {number} least @param {number} most @returns {Sight} */
export function closer({ scale, x, y }, by, [px, py], least, most) {
  const now = Math.min(Math.max(scale * by, least), most)
  return { scale: now, x: px - ((px - x) / scale) * now, y: py - ((py - y) / scale) * now }
}

/** @param {Sight} sight @param {number} dx @param {number} dy @returns {Sight} */
export function shifted({ scale, x, y }, dx, dy) {
  return { scale, x: x + dx, y: y + dy }
}

/** @param {Sight} sight @param {number} east @param {number} north @returns {[number, number]} px */
export function onScreen({ scale, x, y }, east, north) {
  return [x + east * scale, y - north * scale]
}

/** @param {Sight} sight @param {number} px @param {number} py @returns {[number, number]} east, north */
export function onPlan({ scale, x, y }, px, py) {
  return [(px - x) / scale, (y - py) / scale]
}

/** Kept so that some of the plan is always seen. @param {Sight} sight @param {number[]} box @param {number} width @param {number} height @returns {Sight} */
export function kept(sight, [west, south, east, north], width, height) {
  const edge = 40
  const hold = (/** @type {number} */ value, /** @type {number} */ low, /** @type {number} */ high) => Math.min(Math.max(value, low), high)
  return { scale: sight.scale, x: hold(sight.x, edge - east * sight.scale, width - edge - west * sight.scale), y: hold(sight.y, edge + south * sight.scale, height - edge + north * sight.scale) }
}
