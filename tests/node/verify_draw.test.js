// The page's draw gives what the rulebook's vectors say, and an odd word is skipped as they say.

import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import test from 'node:test'
import { draw } from '../../static/verify/draw.js'
import { draw as again } from './draw_again.js'

const vectors = JSON.parse(readFileSync(new URL('../vectors/rules.json', import.meta.url), 'utf8'))
  .filter(({ rule, refused }) => rule === 'draw@1' && !refused)

test('the page draws what the rulebook drew', async () => {
  assert.ok(vectors.length > 7)
  for (const { inputs: { population, n, seed }, values } of vectors) {
    assert.deepEqual(await draw(population, n, Buffer.from(seed, 'hex')), values.indices[0])
  }
})

test('a whole population comes out once each, and as another program draws it', async () => {
  for (const population of [1, 2, 3, 97, 1000]) {
    const seed = population.toString(16).padStart(64, '0')
    const drawn = await draw(population, population, Buffer.from(seed, 'hex'))
    assert.deepEqual(drawn, again(population, population, seed))
    assert.equal(new Set(drawn).size, population)
  }
})
