// A phone's link as the page sees it: its clock goes on by what requests carry at so many kbit/s, so that the client
// chooses its pieces as on such a link, however quick or busy this machine is; waits are shortened by `hurry`.
window.link = { kbits: 1e6, roundTrip: 0, hurry: 1, now: 0, longest: 0, largest: 0 }
;(() => {
  const AROUND = 800 // bytes of a request's headers, and of an answer's
  performance.now = () => window.link.now
  const wait = window.setTimeout
  window.setTimeout = (work, ms = 0, ...rest) => wait(work, ms / window.link.hurry, ...rest)
  const real = window.fetch
  window.fetch = async (path, options = {}) => {
    const body = options.body?.byteLength ?? options.body?.length ?? 0
    const link = window.link
    link.largest = Math.max(link.largest, body)
    const reply = await real(path, options)
    const answer = Number(reply.headers.get('Content-Length') ?? 0)
    const took = link.roundTrip + (body + answer + 2 * AROUND) / (link.kbits / 8)
    link.longest = Math.max(link.longest, took)
    link.now += took
    return reply
  }
})()
