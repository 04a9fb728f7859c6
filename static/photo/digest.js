// SHA-256 of bytes, as lower-case hexadecimal.

/** @param {ArrayBuffer | Uint8Array} bytes */
export async function sha256Hex(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', /** @type {BufferSource} */ (bytes)))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
