// Seconds that the phone's interpreter takes for one answer, the best of some passes, its start not counted.
import { readFileSync } from 'node:fs'
import { opened } from '../micropython/opened.mjs'

const requests = JSON.parse(readFileSync(process.argv[2], 'utf8'))
const ask = await opened()
let best = Infinity
for (let pass = 0; pass < 6; pass += 1) {
  const start = performance.now()
  for (const request of requests) ask(request)
  best = Math.min(best, (performance.now() - start) / 1000 / requests.length)
}
console.log(best)
