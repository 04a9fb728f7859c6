// One header of the POSIX ustar format (IEEE Std 1003.1-2017, pax, "ustar Interchange Format"), written and read: the
// twin of inspect_app/intake/copy_tar.py. Pure.

export const BLOCK = 512
const MAGIC = 'ustar\x0000'
const NAME = 100
const PREFIX = 155

/** Two blocks of zeros end an archive. */
export const END = new Uint8Array(2 * BLOCK)

/** Zeros that fill a member's last block. @param {number} size */
export function padding(size) {
  return new Uint8Array((BLOCK - (size % BLOCK)) % BLOCK)
}

/**
 * @param {string} path ASCII; over 100 signs it is parted at its last `/` @param {number} size bytes
 * @param {number} seconds since 1970 @returns {Uint8Array<ArrayBuffer>} one block
 */
export function header(path, size, seconds) {
  const cut = path.length > NAME ? path.lastIndexOf('/') : -1
  const [prefix, name] = cut < 0 ? ['', path] : [path.slice(0, cut), path.slice(cut + 1)]
  if (name.length > NAME || prefix.length > PREFIX || size > 0o77777777777) throw new RangeError(`no header for ${path}`)
  const block = new Uint8Array(BLOCK)
  const put = (/** @type {number} */ at, /** @type {string} */ text) => new TextEncoder().encodeInto(text, block.subarray(at))
  const octal = (/** @type {number} */ number, /** @type {number} */ digits) => number.toString(8).padStart(digits, '0')
  put(0, name)
  put(100, `${octal(0o644, 7)}\0${octal(0, 7)}\0${octal(0, 7)}\0`) // mode, owner, group
  put(124, `${octal(size, 11)}\0${octal(Math.max(0, Math.floor(seconds)), 11)}\0`)
  put(148, ' '.repeat(8))
  put(156, '0')
  put(257, MAGIC)
  put(345, prefix)
  put(148, `${octal(sum(block), 6)}\0 `)
  return block
}

/** The size of the member that a sound header announces, rounded up to whole blocks; null for any other block.
 * @param {Uint8Array} block @returns {number | null} */
export function announced(block) {
  if (block.length < BLOCK) return null
  const text = new TextDecoder('latin1').decode(block)
  const size = /^([0-7]{11})[\0 ]/.exec(text.slice(124, 136))
  const told = /^([0-7]{6})\0 /.exec(text.slice(148, 156))
  if (text.slice(257, 265) !== MAGIC || !size || !told) return null
  const blank = block.slice()
  blank.fill(32, 148, 156)
  return sum(blank) === parseInt(told[1], 8) ? Math.ceil(parseInt(size[1], 8) / BLOCK) * BLOCK : null
}

/** @param {Uint8Array} block */
function sum(block) {
  return block.reduce((all, byte) => all + byte, 0)
}
