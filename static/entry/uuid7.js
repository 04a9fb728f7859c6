// UUID version 7 (RFC 9562 section 5.7): made on the phone, sorted by the time of making.

/** @param {number} [milliseconds] Unix time @param {Uint8Array} [random] at least 10 bytes */
export function uuid7(milliseconds = Date.now(), random = crypto.getRandomValues(new Uint8Array(10))) {
  if (random.length < 10) throw new RangeError('uuid7 needs 10 random bytes')
  const time = Math.max(0, Math.floor(milliseconds)).toString(16).padStart(12, '0').slice(-12)
  const bytes = random.slice(0, 10)
  bytes[0] = 0x70 | (bytes[0] & 0x0f)
  bytes[2] = 0x80 | (bytes[2] & 0x3f)
  const rest = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  const hex = time + rest
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
