// Chance from a number: the same number, the same throws (mulberry32, a public-domain generator).

export class Dice {
  /** @param {number} seed */
  constructor(seed) {
    this.state = seed >>> 0
  }

  /** In [0, 1). */
  next() {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let t = this.state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  /** A whole number in [from, to]. @param {number} from @param {number} to */
  between(from, to) {
    return from + Math.floor(this.next() * (to - from + 1))
  }

  /** @param {number} chance */
  hits(chance) {
    return this.next() < chance
  }

  /** One of a list, each as likely as it is heavy. @template T @param {[T, number][]} weighted @returns {T} */
  pick(weighted) {
    let left = this.next() * weighted.reduce((sum, [, weight]) => sum + weight, 0)
    for (const [what, weight] of weighted) if ((left -= weight) < 0) return what
    return weighted[0][0]
  }

  /** @param {Uint8Array} bytes filled in place; of a large one only the first kilobyte is thrown */
  fill(bytes) {
    for (let at = 0; at < Math.min(bytes.length, 1024); at += 1) bytes[at] = this.next() * 256
    return bytes
  }
}
