// WebCrypto as a page sees it, made of Node's own primitives: the same algorithms, but keys come from the dice and every
// answer is a task of its own, so that a database transaction that is awaited in ends, as it does in a browser.

import { createECDH, createHash, createPrivateKey, createPublicKey, sign, verify } from 'node:crypto'

/** @type {Map<string, any>} what was read of a key's text, once */
const read = new Map()

/** @param {(work: () => any) => Promise<any>} later runs work in a task of its own @param {import('./dice.mjs').Dice} dice */
export function cryptoFor(later, dice) {
  const subtle = {
    digest: (_, data) => later(() => buffer(createHash('sha256').update(view(data)).digest())),
    generateKey: () => later(() => {
      const pair = createECDH('prime256v1')
      const secret = dice.fill(new Uint8Array(32)).fill(0, 0, 1) // below the order of the curve
      pair.setPrivateKey(secret)
      const point = pair.getPublicKey()
      const jwk = { kty: 'EC', crv: 'P-256', x: text(point.subarray(1, 33)), y: text(point.subarray(33)) }
      return { publicKey: { type: 'public', jwk }, privateKey: { type: 'private', jwk: { ...jwk, d: text(secret) } } }
    }),
    exportKey: (_, key) => later(() => ({ ...key.jwk, ext: true, key_ops: ['verify'] })),
    importKey: (_, jwk) => later(() => {
      publicKey(jwk)
      return { type: 'public', jwk }
    }),
    sign: (_, key, data) => later(() => buffer(sign('sha256', view(data), { key: privateKey(key.jwk), dsaEncoding: 'ieee-p1363' }))),
    verify: (_, key, signature, data) => later(() =>
      verify('sha256', view(data), { key: publicKey(key.jwk), dsaEncoding: 'ieee-p1363' }, view(signature))),
  }
  return { subtle, getRandomValues: (bytes) => (dice.fill(new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength)), bytes) }
}

const privateKey = (jwk) => kept(`private ${jwk.x}`, () => createPrivateKey({ key: jwk, format: 'jwk' }))
const publicKey = (jwk) => kept(`public ${jwk.x} ${jwk.y}`, () => createPublicKey({ key: jwk, format: 'jwk' }))

function kept(name, make) {
  if (!read.has(name)) read.set(name, make())
  return read.get(name)
}

const view = (data) => (data instanceof ArrayBuffer ? new Uint8Array(data) : new Uint8Array(data.buffer, data.byteOffset, data.byteLength))
const buffer = (bytes) => new Uint8Array(bytes).buffer
const text = (bytes) => Buffer.from(bytes).toString('base64url')
