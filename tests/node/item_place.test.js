// What waits says where it belongs and what was asked there; what the record does not tell is left out.

import { test } from 'node:test'
import assert from 'node:assert/strict'
import { readFile } from 'node:fs/promises'

globalThis.document = /** @type {any} */ ({ documentElement: { lang: '' } })
globalThis.window = /** @type {any} */ (new EventTarget())
globalThis.localStorage ??= /** @type {any} */ ({ getItem: () => null, setItem: () => {} })
const { takeWords, setLanguage } = await import('../../static/words/say.js')
const { itemPlace } = await import('../../static/phone/item_place.js')

const answer = { walk: 'w', definition: 'digest', item: 'i' }
const record = {
  areas: { a: { id: 'a', name: 'Quay slope' }, b: { id: 'b', name: 'Net loft' } },
  walks: { w: { id: 'w', areas: ['a', 'b'] } },
  stations: { s: { id: 's', walk: 'w', area: 'a', panel: 12, from_low_end: { value: '18', unit: 'ft' }, zone: 'edge', chosen: 'hand' } },
  answers: { 's/d/i': { ...answer, station: 's', area: 'a' }, 'w/d/i': { ...answer, station: null, area: null } },
  photos: { p: { walk: 'w', station: 's', answer: 's/d/i' }, leg: { walk: 'w', station: null, answer: null, area: 'b', panel: 3 } },
  fits: { b: { area: 'b' } },
}
const definitions = [{ id: 'd', digest: 'digest', items: [{ id: 'i', question: { en: 'Is the screw free?', es: '¿Está libre el tornillo?' } }] }]
const of = (/** @type {string} */ kind, /** @type {string} */ subject) => itemPlace(record, definitions, { kind, subject }).replace(/\s/g, ' ')

test('an answer and its picture tell the question and the place, in the language of whoever reads', async () => {
  takeWords(JSON.parse(await readFile(new URL('../../static/words/screens.json', import.meta.url), 'utf8')))
  setLanguage('en')
  assert.equal(of('answer', 's/d/i'), 'Is the screw free? · Quay slope · Panel 12, its open leg · 18 ft from the low end · edge')
  assert.equal(of('photo', 'p'), of('answer', 's/d/i'))
  assert.equal(of('answer', 'w/d/i'), 'Is the screw free? · Quay slope · Net loft')
  setLanguage('es')
  assert.match(of('photo', 'p'), /^¿Está libre el tornillo\? · Quay slope · .*12/)
})

test('what speaks of an area, a panel or a walk names it, and what the record lacks is left out', () => {
  setLanguage('en')
  assert.equal(of('photo', 'leg'), 'Net loft · Panel 3, its open leg')
  assert.equal(of('fit', 'b'), 'Net loft')
  assert.equal(of('area', 'a'), 'Quay slope')
  assert.equal(of('walk', 'w'), 'Quay slope · Net loft')
  for (const [kind, subject] of [['answer', 'gone'], ['correction', 's'], ['stop', 'x'], ['job', 'j']]) assert.equal(of(kind, subject), '')
})
