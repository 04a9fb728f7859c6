// Room for the browser to put its own store in order: without it nothing is opened, and nothing written.
//
// A disk without any room tears the end of what is written. The store outlives that once, where there is room for a new
// log (turn.js): opened a second time over a torn end it is thrown away. A start does not know how the last one ended, and
// what a browser says of free space is not to be believed; so before the first opening the room is really taken, and given
// back at once. The same before each write while the ballast is gone.

import { Trouble } from '../words/trouble.js'
import { giveRoom, onRoom, tryRoom } from './held_room.js'

const RESERVE = 12 * 1024 * 1024 // bytes: a full log, the table that is made of it, and a little

let sure = !keepsLog()
/** No room is seen to be there for longer than a moment. */
let short = false
/** @type {Promise<unknown>} the last write that was not sure of its room */
let turn = Promise.resolve()

onRoom((held) => {
  short = !held
  if (short) sure = !keepsLog()
})

/** Only browsers with this word in their name keep such a log; for others all this would be done for nothing. */
export function keepsLog() {
  return /Chrom(e|ium)\//.test(globalThis.navigator?.userAgent ?? '')
}

/**
 * Run a write where there is room. While that is not sure they run one after the other, so that no look for room takes
 * another's.
 * @template T @param {() => Promise<T>} write @param {number} [need] bytes; 0 for what makes room, or has seen that it is there
 * @returns {Promise<T>} @throws {Trouble} `outbox.disk_full`
 */
export function withReserve(write, need = RESERVE) {
  if (sure) return write()
  const mine = turn.then(async () => {
    if (need) await seeRoom(need)
    return write()
  })
  turn = mine.catch(() => {})
  return mine
}

/** @type {Map<number, Promise<void>>} */
const looking = new Map()

/** @param {number} [need] bytes @throws {Trouble} `outbox.disk_full` where they are not free, the ballast's room included */
export async function seeRoom(need = RESERVE) {
  if (sure) return
  if (!looking.has(need)) looking.set(need, look(need).finally(() => looking.delete(need)))
  await looking.get(need)
}

/** @param {number} need */
async function look(need) {
  if ((await tryRoom(need)) === 'full') {
    await giveRoom()
    if ((await tryRoom(need)) === 'full') throw Object.assign(new Trouble('outbox.disk_full', { field: 'text', value: '' }), { name: 'QuotaExceededError' })
  }
  sure = !short
}
