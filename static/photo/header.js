// What the first bytes of a picture say of it, without decoding: type, and pixels where they stand plainly.

/**
 * @param {Uint8Array} bytes @param {string} declared type given by the phone
 * @returns {{type: string | null, width: number | null, height: number | null}} `type` null: not a picture
 */
export function header(bytes, declared) {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return { type: 'image/jpeg', ...jpegSize(bytes) }
  if (text(bytes, 1, 4) === 'PNG') return { type: 'image/png', ...pngSize(bytes) }
  if (text(bytes, 4, 8) === 'ftyp' && /^(hei[cxms]|mif1|msf1|hev[cx])$/.test(text(bytes, 8, 12))) {
    return { type: 'image/heic', width: null, height: null }
  }
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP') return { type: 'image/webp', width: null, height: null }
  return { type: declared.startsWith('image/') ? declared : null, width: null, height: null }
}

/** @param {Uint8Array} bytes @param {number} from @param {number} to */
function text(bytes, from, to) {
  return String.fromCharCode(...bytes.subarray(from, to))
}

/** Frame header of ITU-T T.81 B.2.2: marker SOFn, length, precision, lines, samples per line. @param {Uint8Array} bytes */
function jpegSize(bytes) {
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]
    if (marker === 0xff) {
      at += 1
    } else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      return { height: bytes[at + 5] * 256 + bytes[at + 6], width: bytes[at + 7] * 256 + bytes[at + 8] }
    } else {
      at += 2 + bytes[at + 2] * 256 + bytes[at + 3]
    }
  }
  return { width: null, height: null }
}

/** IHDR is always the first chunk (PNG specification 11.2.2). @param {Uint8Array} bytes */
function pngSize(bytes) {
  if (bytes.length < 24) return { width: null, height: null }
  const view = new DataView(bytes.buffer, bytes.byteOffset)
  return { width: view.getUint32(16), height: view.getUint32(20) }
}
