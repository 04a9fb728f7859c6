// A draw done again from nothing but the README, every place kept and exchanged: node tests/node/draw_again.js POPULATION N SEED

import { createHash } from 'node:crypto'

function* words(seed) {
  for (let block = 0n; ; block++) {
    const number = Buffer.alloc(8)
    number.writeBigUInt64BE(block)
    const digest = createHash('sha256').update(seed).update(number).digest()
    for (let at = 0; at < 32; at += 8) yield digest.readBigUInt64BE(at)
  }
}

export function below(m, from) {
  const end = 2n ** 64n - (2n ** 64n % m)
  for (;;) {
    const word = from.next().value
    if (word < end) return word % m
  }
}

export function draw(population, n, seed) {
  const places = Array.from({ length: population }, (_, place) => place), from = words(Buffer.from(seed, 'hex'))
  for (let k = 0; k < n; k++) {
    const other = k + Number(below(BigInt(population - k), from))
    ;[places[k], places[other]] = [places[other], places[k]]
  }
  return places.slice(0, n)
}

if (process.argv[1]?.endsWith('draw_again.js')) console.log(draw(Number(process.argv[2]), Number(process.argv[3]), process.argv[4]).join(' '))
