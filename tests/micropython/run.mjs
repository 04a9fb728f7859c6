// Answer requests (a JSON list of texts in a file) with the rulebook under MicroPython, as the phone does.
import { readFileSync } from 'node:fs'
import { opened } from './opened.mjs'

const ask = await opened()
console.log(JSON.stringify(JSON.parse(readFileSync(process.argv[2], 'utf8')).map((text) => JSON.parse(ask(text)))))
