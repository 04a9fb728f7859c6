// An outline pulled to typed lengths. The shapes are the right triangles 3-4-5 and their multiples, so that each
// corner is known by Pythagoras.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { begin, FORMS } from '../../static/draw/forms.js'
import { long, numbers, ring, split, turning, without } from '../../static/draw/outline.js'
import { taut } from '../../static/draw/taut.js'

/** @param {string} form */
const corners = (form) => numbers(begin(form, false).points)

test('a rectangle keeps its right angles', () => {
  assert.deepEqual(ring(taut(corners('rectangle'), [24, 12, null, null])), [['0', '0'], ['24', '0'], ['24', '12'], ['0', '12']])
})

test('a triangle of three lengths has its apex where Pythagoras puts it', () => {
  assert.deepEqual(ring(taut(corners('triangle'), [40, 25, 25])), [['0', '0'], ['40', '0'], ['20', '15']])
})

test('a trapezoid keeps its ridge level', () => {
  assert.deepEqual(ring(taut(corners('trapezoid'), [48, 25, 18, 25])), [['0', '0'], ['48', '0'], ['33', '20'], ['15', '20']])
})

test('what is not typed gives way, what was typed stays', () => {
  const once = taut(corners('l'), [36, null, null, null, null, null])
  assert.deepEqual(ring(taut(once, [36, null, 12, null, null, null])).slice(2, 5), [['36', '20'], ['24', '20'], ['24', '40']])
})

test('lengths that no outline has are told, and move nothing', () => {
  assert.equal(taut(corners('triangle'), [40, 10, 10]), null)
  assert.equal(taut(corners('rectangle'), [24, null, 25, null]), null)
  assert.equal(taut(corners('l'), [36, 14, 12, 16, 25, 30]), null)
})

test('a corner more and a corner less leave as many edges as corners', () => {
  for (const form of FORMS.filter((one) => one !== 'free')) {
    const drawn = begin(form, true)
    assert.ok(turning(numbers(drawn.points)) > 0)
    const more = split({ ...drawn, lengths: drawn.points.map(() => '1') }, 1)
    assert.equal(more.points.length, more.edges.length)
    assert.equal(long(more.points, 1) * 2, long(drawn.points, 1))
    assert.deepEqual([more.edges[1], more.edges[2], more.lengths[1], more.lengths[2]], [drawn.edges[1], drawn.edges[1], null, null])
    assert.deepEqual(without(more, 2).points, drawn.points)
  }
})
