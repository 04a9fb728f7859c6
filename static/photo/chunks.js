// How a photo's bytes are cut: pure, so that storing, reading and sending agree.

export const CHUNK = 256 * 1024
export const PHOTO_LIMIT = 40_000_000 // what the office takes: a larger one would be kept and never arrive

/** Stored chunks of `size` bytes. @param {number} size @returns {{n: number, from: number, to: number}[]} */
export function chunkPlan(size) {
  const plan = []
  for (let from = 0; from < size; from += CHUNK) {
    plan.push({ n: plan.length, from, to: Math.min(from + CHUNK, size) })
  }
  return plan
}

/**
 * The next piece to send: at most `piece` bytes from `offset`, never across a stored chunk's end, so that one
 * stored row is read and checked for each request.
 * @param {number} size of the photo @param {number} offset the server has @param {number} piece
 */
export function nextPiece(size, offset, piece) {
  const n = Math.floor(offset / CHUNK)
  const to = Math.min(offset + piece, (n + 1) * CHUNK, size)
  return { n, within: offset - n * CHUNK, length: to - offset }
}
