// The draw done again without any of our code gives what the rulebook's vectors say.

import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import test from 'node:test'
import { below, draw } from './draw_again.js'

const vectors = JSON.parse(readFileSync(new URL('../vectors/rules.json', import.meta.url), 'utf8'))
  .filter(({ rule, refused }) => rule === 'draw@1' && !refused)

test('a stranger draws what the rulebook drew', () => {
  assert.ok(vectors.length > 7)
  for (const { inputs, values } of vectors) {
    assert.deepEqual(draw(inputs.population, inputs.n, inputs.seed), values.indices[0], JSON.stringify(inputs))
  }
})

test('a word from the uneven end is skipped', () => {
  const from = (...words) => words.map(BigInt).values()
  assert.equal(below(10n, from(2n ** 64n - 6n, 2n ** 64n - 7n)), 9n)
  assert.equal(below(1n, from(5, 6)), 0n)
})
