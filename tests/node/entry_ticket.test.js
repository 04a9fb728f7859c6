import assert from 'node:assert/strict'
import { test } from 'node:test'

import { makeKey } from '../../static/entry/key.js'
import { signJws } from '../../static/entry/sign.js'
import { verifyTicket } from '../../static/entry/ticket.js'
import { codeOf, entries, statements } from './known.js'

const tokens = statements.statements.map((/** @type {any} */ row) => row.token)
const ticket = tokens[4]
const said = JSON.parse(Buffer.from(ticket.split('.')[1], 'base64url').toString())
const whose = { job: said.job, kid: entries.kid, series: /** @type {const} */ ('work') }
const bytes = Buffer.from(Uint8Array.from({ length: 32 }, (_, index) => index + 32)).toString('base64url')

/** @param {any} token @param {any} [expected] */
const code = (token, expected = whose) => codeOf(() => verifyTicket(token, statements.server, expected))

test('a ticket of the pinned server for this key, job and series tells its number and its bytes', async () => {
  assert.deepEqual(await verifyTicket(ticket, statements.server, whose), { n: 3, random: bytes })
})

test('a ticket of another key, job or series, another statement, a portal\'s page and nothing are refused', async () => {
  for (const other of [{ kid: statements.kid }, { job: said.job.replace('0', '1') }, { series: 'audit' }]) {
    assert.equal(await code(ticket, { ...whose, ...other }), 'bad_field')
  }
  for (const token of tokens.filter((one) => one !== ticket)) assert.equal(await code(token), 'unknown_kind')
  for (const junk of ['<html>', '', undefined, null, {}, 7]) assert.equal(await code(junk), 'malformed')
})

test('a ticket by another key than the server\'s is refused, whatever key it names', async () => {
  const stranger = await makeKey()
  assert.equal(await code((await signJws(said, 'seamwalk-statement', stranger)).token), 'unknown_key')
  const named = { ...stranger, kid: statements.kid }
  assert.equal(await code((await signJws(said, 'seamwalk-statement', named)).token), 'bad_signature')
})

test('what the server would never sign is no ticket even under its signature', async () => {
  const key = await makeKey()
  for (const [change, wanted] of /** @type {[any, string][]} */ ([
    [{ v: 2 }, 'unknown_version'], [{ n: -1 }, 'bad_field'], [{ n: '3' }, 'bad_field'], [{ random: bytes.slice(1) }, 'bad_field'],
  ])) {
    const { token } = await signJws({ ...said, ...change }, 'seamwalk-statement', key)
    assert.equal(await codeOf(() => verifyTicket(token, key.jwk, whose)), wanted, JSON.stringify(change))
  }
})

test('no changed letter of a ticket is taken', async () => {
  for (let place = 0; place < ticket.length; place += 1) {
    const letter = ticket[place] === 'A' ? 'B' : 'A'
    assert.notEqual(await code(ticket.slice(0, place) + letter + ticket.slice(place + 1)), 'taken', String(place))
  }
})
