// How many bytes, in words.

import { say } from '../words/say.js'

/** @param {number} bytes */
export function size(bytes) {
  return bytes < 1024 * 1024 ? say('copy.size.kb', { n: Math.ceil(bytes / 1024) }) : say('copy.size.mb', { n: (bytes / 1024 / 1024).toFixed(1) })
}
