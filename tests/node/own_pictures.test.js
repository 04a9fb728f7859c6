import assert from 'node:assert/strict'
import test from 'node:test'

import { ownPictures } from '../../static/record/own_pictures.js'

const finding = (/** @type {any} */ told) => ({ state: 'open', crew: 'Crew 2', photos: [], corrections: [], history: [], opened: { by: 'mara', at: '2026-09-14T10:00:00Z' }, ...told })
const RECORD = {
  walks: { w: { by: 'tom', crew: ' crew  2' } }, lots: {}, days: [{ crew: 'Crew 7', entries: [{ by: 'ann' }] }],
  findings: {
    old: finding({ photos: ['a', 'b'] }),
    new: finding({ state: 'corrected', photos: ['c'], corrections: [{ photos: ['d'] }], history: [{ at: '2026-09-14T09:00:00-05:00' }] }),
    closed: finding({ state: 'closed', photos: ['e'] }),
    theirs: finding({ crew: 'Crew 7', photos: ['f', 'a'] }),
    nobody: finding({ crew: '', photos: ['g'] }),
  },
}

test('a crew takes its own pictures, the finding spoken of last first, each once, none of what is done', () => {
  assert.deepEqual(ownPictures(RECORD, 'tom', false), ['d', 'c', 'b', 'a'])
  assert.deepEqual(ownPictures(RECORD, 'ann', false), ['a', 'f'])
  assert.deepEqual(ownPictures(RECORD, 'office', false), [])
})

test('whoever opened a finding needs its pictures to look again, and whoever sees a part needs all that is shown', () => {
  assert.deepEqual(new Set(ownPictures(RECORD, 'mara', false)), new Set(['a', 'b', 'c', 'd', 'f', 'g']))
  assert.deepEqual(new Set(ownPictures(RECORD, 'lena', true)), new Set(['a', 'b', 'c', 'd', 'f', 'g']))
})
