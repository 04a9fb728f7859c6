// MicroPython with the rulebook in it, as the phone has it: the one door, text to text, and the interpreter behind it.
import { readFileSync, readdirSync } from 'node:fs'
import { loadMicroPython } from '../../static/vendor/micropython.mjs'
import { writeFiles } from '../../static/rules/files.js'

const root = new URL('../../', import.meta.url)

export async function interpreter() {
  const python = await loadMicroPython({ heapsize: 64 * 1024 * 1024 })
  const files = ['rules', 'record'].flatMap((name) => readdirSync(new URL(`inspect_app/${name}/`, root))
    .filter((file) => file.endsWith('.py'))
    .map((file) => [`${name}/${file}`, readFileSync(new URL(`inspect_app/${name}/${file}`, root), 'utf8')]))
  return { python, ask: writeFiles(python, files) }
}

export async function opened() {
  return (await interpreter()).ask
}
