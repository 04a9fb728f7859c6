// Throw-away bytes that hold room for the item in hand when the disk fills up: what a browser says of free
// space is not to be believed, so the room is really taken. 32 MiB is eight photos of a phone's camera.
//
// They lie among the browser's stored responses, where it has such: to drop those needs no room, while to take rows out of
// the database is a write, and a disk that is full to the brim takes none.

import { withDb } from './database.js'
import { isDiskFull } from './faults.js'
import { giveRoom, holdRoom, roomHeld } from './held_room.js'

const BRICKS = 32
const BRICK = 1024 * 1024

/** Top the ballast up. @param {number} [bricks] @returns {Promise<boolean>} false when the disk has no room for it */
export async function layBallast(bricks = BRICKS) {
  const said = await holdRoom(bricks * BRICK)
  if (said === 'none') return layBricks(bricks)
  await clearBricks() // of a build that kept them here
  return said === 'done'
}

/** Is all of it held? */
export function ballastWhole() {
  return roomHeld(BRICKS * BRICK)
}

/** Give the room back. */
export async function dropBallast() {
  await giveRoom()
  await clearBricks()
}

/** @param {number} bricks */
async function layBricks(bricks) {
  try {
    for (let n = 0; n < bricks; n += 1) {
      const held = await withDb(['ballast'], 'readonly', (tx) => tx.store.getKey(n))
      const brick = held === undefined ? randomBrick() : null
      if (brick) await withDb(['ballast'], 'readwrite', (tx) => tx.store.put(brick, n), { relaxed: true })
    }
    return true
  } catch (fault) {
    if (isDiskFull(fault)) return false
    throw fault
  }
}

async function clearBricks() {
  if (!(await withDb(['ballast'], 'readonly', (tx) => tx.store.count()))) return
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.clear())
}

/** Random, because the store under the browser compresses. */
function randomBrick() {
  const brick = new Uint8Array(BRICK)
  for (let at = 0; at < BRICK; at += 65_536) crypto.getRandomValues(brick.subarray(at, at + 65_536))
  return brick.buffer
}
