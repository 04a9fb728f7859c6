// Shares on a form are in a hundred, in an entry decimal text: no digit is lost or made up between them.

import assert from 'node:assert/strict'
import test from 'node:test'
import { hundredfold, share } from '../../static/lot/hundredth.js'

const PAIRS = [['10', '0.1'], ['5', '0.05'], ['0', '0'], ['100', '1'], ['0.5', '0.005'], ['2.5', '0.025'], ['95', '0.95'], ['99.9', '0.999'], ['12.34', '0.1234'], ['0.07', '0.0007']]

test('a share of a hundred becomes the same share of one, and comes back', () => {
  for (const [percent, decimal] of PAIRS) {
    assert.equal(share(percent), decimal, percent)
    assert.equal(hundredfold(decimal), percent, decimal)
  }
})

test('a share written with noughts at its end is the same share', () => {
  assert.equal(hundredfold('0.10'), '10')
  assert.equal(hundredfold('0.950'), '95')
})
