// Areas on the plan. The figure is a hip roof of 60 by 30 ft at 4 in 12: a plane 15 ft deep from above is
// 15 × √(4² + 12²) / 12 ft up its slope, and its four planes close round the ridge.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { against } from '../../static/draw/against.js'
import { laidOut, cosine, toArea, toPlan } from '../../static/roof/placing.js'

const UP = 15 * Math.hypot(4, 12) / 12
const SLOPE = { value: '4', unit: '/12' }
const SIDE = [[0, 0], [60, 0], [45, UP], [15, UP]], END = [[0, 0], [30, 0], [15, UP]]
const near = (one, other, by = 1e-6) => one.forEach((value, i) => assert.ok(Math.abs(value - other[i]) < by, `${one} is not ${other}`))

test('a slope seen from above is shorter by its cosine, however it is told', () => {
  near([cosine(SLOPE), cosine({ value: '60', unit: 'deg' }), cosine({ value: '100', unit: '%' })], [12 / Math.hypot(4, 12), 0.5, Math.SQRT1_2])
})

test('the planes of a hip roof laid edge to edge close round its ridge', () => {
  const south = { east: 0, north: 0, up: 0, cos: cosine(SLOPE), metre: 1, told: true }
  const own = (points) => ({ points, cos: cosine(SLOPE), metre: 1 })
  const east = against(own(END), 2, { place: south, points: SIDE }, 1, 'middle')
  near([east.east, east.north, east.up, east.differ], [60, 0, 270, 0])
  const north = against(own(SIDE), 2, { place: south, points: SIDE }, 2, 'from')
  near([north.east, north.north, north.up], [60, 30, 180])
})

test('a point of the plan goes back to where it was', () => {
  const place = { east: 7, north: -3, up: 123, cos: 0.8, metre: 0.3048, told: true }
  near(toArea(place, ...toPlan(place, 11, 5)), [11, 5])
  const east = { east: 0, north: 0, up: 90, cos: 1, metre: 1, told: true } // up-slope to the east: right along the eave is south
  near(toPlan(east, 2, 5), [5, -2])
})

test('areas that nobody placed stand beside each other and cover none', () => {
  const area = (id, place) => ({ id, slope: SLOPE, place, outline: { unit: 'm', points: SIDE.map((point) => point.map(String)) } })
  const boxes = laidOut([area('a', { unit: 'm', east: '0', north: '0', up: '0' }), area('b'), area('c')]).map((one) => one.box)
  for (const [i, one] of boxes.entries()) {
    for (const other of boxes.slice(i + 1)) assert.ok(one[0] >= other[2] || one[2] <= other[0] || one[1] >= other[3] || one[3] <= other[1])
  }
})
