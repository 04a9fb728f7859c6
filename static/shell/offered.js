// The build that our server has now, asked past the worker and every cache.

const HEADER = 'Seamwalk-Build'
const LIMIT = 10_000 // ms

/** @returns {Promise<string>} empty without an answer that is ours */
export async function offered() {
  try {
    const reply = await fetch('/sw.js', { method: 'HEAD', cache: 'no-store', redirect: 'error', signal: AbortSignal.timeout(LIMIT) })
    return (reply.ok && reply.headers.get(HEADER)) || ''
  } catch {
    return ''
  }
}
