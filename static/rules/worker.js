// MicroPython with the server's rulebook in it. Only JSON text crosses: numbers would not survive otherwise.

import { loadMicroPython } from '../vendor/micropython.mjs'
import { writeFiles } from './files.js'

const HEAP = 64 * 1024 * 1024

/** The files that this build of the app is made of, as text. @returns {Promise<[string, string][]>} */
async function fetched() {
  return Object.entries(await (await fetch('/rulebook.json')).json())
}

async function start() {
  const [python, files] = await Promise.all([
    loadMicroPython({ url: new URL('../vendor/micropython.wasm', import.meta.url).href, heapsize: HEAP }), fetched(),
  ])
  return writeFiles(python, files)
}

const started = start()

self.onmessage = async ({ data: { id, text } }) => {
  try {
    const ask = await started
    self.postMessage({ id, text: ask(text) })
  } catch (reason) {
    self.postMessage({ id, crash: String(reason) })
  }
}
