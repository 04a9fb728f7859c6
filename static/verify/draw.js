// The draw of a lot, written down a second time from its description (inspect_app/rules/draw.py), so that two programs
// come to the same panels: SHA-256 in blocks, words of 8 bytes, no remainder favoured, then a partial exchange shuffle
// (R. Durstenfeld, CACM algorithm 235, 1964).

/** The seed of a lot. @param {Uint8Array} random of its ticket, 32 bytes @param {string} lot its name */
export async function seedOf(random, lot) {
  return sha256(joined(new TextEncoder().encode('draw-1'), random, new TextEncoder().encode(lot)))
}

/**
 * `n` different numbers from 0 to `population` − 1, in the order drawn.
 * @param {number} population @param {number} n @param {Uint8Array} seed
 */
export async function draw(population, n, seed) {
  const words = wordsOf(seed)
  /** What stands at a place, where that is not its own number. @type {Map<number, number>} */
  const moved = new Map()
  const drawn = []
  for (let k = 0; k < n; k += 1) {
    const place = k + (await below(population - k, words))
    drawn.push(moved.get(place) ?? place)
    moved.set(place, moved.get(k) ?? k)
  }
  return drawn
}

/** @param {Uint8Array} seed */
async function* wordsOf(seed) {
  for (let block = 0n; ; block += 1n) {
    const counter = new DataView(new ArrayBuffer(8))
    counter.setBigUint64(0, block)
    const view = new DataView((await sha256(joined(seed, new Uint8Array(counter.buffer)))).buffer)
    for (const at of [0, 8, 16, 24]) yield view.getBigUint64(at)
  }
}

/** @param {number} m @param {AsyncGenerator<bigint, any>} words */
async function below(m, words) {
  const [all, many] = [1n << 64n, BigInt(m)]
  for (;;) {
    const word = (await words.next()).value
    if (word < (all / many) * many) return Number(word % many)
  }
}

/** @param {...Uint8Array} parts */
function joined(...parts) {
  const whole = new Uint8Array(parts.reduce((size, one) => size + one.length, 0))
  let at = 0
  for (const one of parts) {
    whole.set(one, at)
    at += one.length
  }
  return whole
}

/** @param {Uint8Array} bytes */
async function sha256(bytes) {
  return new Uint8Array(await crypto.subtle.digest('SHA-256', /** @type {BufferSource} */ (bytes)))
}
