// Answer requests (a JSON list of texts in a file) with the rulebook under MicroPython, as the phone does.
import { readFileSync, readdirSync } from 'node:fs'
import { loadMicroPython } from '../../static/vendor/micropython.mjs'
import { writeFiles } from '../../static/rules/files.js'

const root = new URL('../../', import.meta.url)
const python = await loadMicroPython({ heapsize: 64 * 1024 * 1024 })
const files = ['rules', 'record'].flatMap((name) => readdirSync(new URL(`inspect_app/${name}/`, root))
  .filter((file) => file.endsWith('.py'))
  .map((file) => [`${name}/${file}`, readFileSync(new URL(`inspect_app/${name}/${file}`, root), 'utf8')]))
const ask = writeFiles(python, files)
console.log(JSON.stringify(JSON.parse(readFileSync(process.argv[2], 'utf8')).map((text) => JSON.parse(ask(text)))))
