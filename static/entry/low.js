// The lower of the two values of s that are valid for every ECDSA signature. Browsers give either; the server
// takes only the lower, so that nobody else can make a second token of the same content.

// The order of P-256: NIST SP 800-186, section 3.2.1.3.
const ORDER = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n

/** @param {Uint8Array} signature 64 bytes, r then s */
export function isLow(signature) {
  return 2n * number(signature.subarray(32)) < ORDER
}

/** The same signature with s in the lower half. @param {Uint8Array} signature */
export function lowered(signature) {
  if (isLow(signature)) return signature
  const result = signature.slice()
  let s = ORDER - number(signature.subarray(32))
  for (let index = 63; index >= 32; index -= 1) {
    result[index] = Number(s & 0xffn)
    s >>= 8n
  }
  return result
}

/** @param {Uint8Array} bytes big-endian */
function number(bytes) {
  let value = 0n
  for (const byte of bytes) value = (value << 8n) | BigInt(byte)
  return value
}
