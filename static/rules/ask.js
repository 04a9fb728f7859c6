// Ask the rulebook: the very Python files of the server, in a worker of their own. Nothing here computes.

/** Input that the rulebook cannot take. */
export class Refused extends Error {
  /** @param {{code: string, field: string, value: any}} facts */
  constructor({ code, field, value }) {
    super(`${code}: ${field}`)
    this.code = code
    this.field = field
    this.value = value
  }
}

/** @type {Worker | null} */
let worker = null
let last = 0
/** @type {Map<number, {resolve: (value: any) => void, reject: (reason: Error) => void}>} */
const waiting = new Map()

function running() {
  if (worker) return worker
  worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' })
  worker.onmessage = ({ data }) => settle(data)
  worker.onerror = (event) => fail(new Error(event.message || 'the rulebook did not start'))
  return worker
}

/** @param {{id: number, text?: string, crash?: string}} answer */
function settle({ id, text, crash }) {
  const asked = waiting.get(id)
  waiting.delete(id)
  if (!asked) return
  if (text === undefined) {
    asked.reject(new Error(crash))
    return fail(new Error(crash)) // what crashed once is started anew
  }
  const answer = JSON.parse(text)
  if (answer.refused) asked.reject(new Refused(answer.refused))
  else asked.resolve(answer.ok)
}

/** @param {Error} reason */
function fail(reason) {
  worker?.terminate()
  worker = null
  for (const { reject } of waiting.values()) reject(reason)
  waiting.clear()
}

/**
 * One request of `inspect_app.record.ask`, as `{call: 'judge_item', item, context}`.
 * @param {object} request
 * @returns {Promise<any>} rejects with `Refused` for input that cannot be taken
 */
export function ask(request) {
  const id = ++last
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject })
    try {
      running().postMessage({ id, text: JSON.stringify(request) })
    } catch (reason) {
      waiting.delete(id)
      reject(reason)
    }
  })
}
