// The draw's even number below m from planted words, under MicroPython: [[m, word], …] as text, for they pass a double.
import { interpreter } from './opened.mjs'

const asked = JSON.parse(process.argv[2]).map((pair) => `(${pair.join(', ')})`).join(', ')
const { python } = await interpreter()
python.runPython(`
import json
from inspect_app.rules.draw import _below
told = json.dumps([_below(m, iter([word, 2])) for m, word in [${asked}]])
`)
console.log(python.globals.get('told'))
