// Prove to the server that this device holds its key: sign the server's nonce, for one purpose.

import { signJws } from './sign.js'

/** @param {string} nonce @param {'enrol' | 'deliver'} purpose @param {import('./key.js').SigningKey} key */
export async function makeProof(nonce, purpose, key) {
  return (await signJws({ nonce, purpose }, 'seamwalk-proof', key)).token
}
