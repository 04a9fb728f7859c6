// One call of the phone's storage, network, cryptography or files fails, in the way named; all are counted, and what
// was really completed is noted. Put over the page before the app's modules run. `fault.set(kind, at, how)` arms it.
(() => {
  const counts = { storage: 0, fetch: 0, crypto: 0, file: 0 }
  const fault = { kind: '', at: 0, how: '', hit: '', opens: 0, calls: 0, counts, completed: new Set(), relaxed: new Set(), last: 0 }
  window.fault = fault
  fault.set = (kind, at, how) => {
    for (const name of Object.keys(counts)) counts[name] = 0
    Object.assign(fault, { kind, at, how, hit: '', opens: 0 })
  }
  fault.quiet = async (pause = 25) => { // nothing of the last run goes on behind the next
    while (performance.now() - fault.last < pause) await new Promise((done) => setTimeout(done, 10))
  }

  /** How this call is to fail, or ''. */
  const turn = (kind, name) => {
    fault.last = performance.now()
    counts[kind] += 1
    if (kind !== fault.kind || counts[kind] !== fault.at) return ''
    fault.hit = name
    return fault.how
  }

  // Where something never answers, limits of seconds pass faster; rounds that the engine plans for later are left to
  // the script.
  const later = window.setTimeout, SHORT = { 3000: 150, 15000: 500 }, always = window.limits ?? {}
  window.setTimeout = (work, ms = 0, ...rest) => {
    const limit = ms in SHORT || (ms >= 20_000 && String(work).includes('abort'))
    if (ms > 600 && ms !== 1000 && !limit) return 0
    if (ms in always) return later(work, always[ms], ...rest)
    return later(work, limit && fault.how === 'never' ? SHORT[ms] ?? 1500 : ms, ...rest)
  }

  const made = (type) => window.eventFor?.(type) ?? new Event(type)
  const gone = (name) => new DOMException('made to fail', name)
  const swallow = (target, ...types) => types.forEach((type) => target.addEventListener(type, (event) => event.stopImmediatePropagation()))
  const instead = (request, error) => { // the work is done, and told as failed
    Object.defineProperty(request, 'error', { get: () => error, set() {} })
    request.addEventListener('success', (event) => { event.stopImmediatePropagation(); request.dispatchEvent(made('error')) })
  }
  const abortWith = (tx, error) => {
    Object.defineProperty(tx, 'error', { get: () => error, set() {} })
    try { tx.abort() } catch { /* ended */ }
  }
  const close = (db) => { db.close(); db.dispatchEvent(made('close')) }

  const open = IDBFactory.prototype.open
  IDBFactory.prototype.open = function (...args) {
    fault.opens += 1
    const how = turn('storage', 'open')
    if (how === 'InvalidStateError') throw gone(how)
    const request = open.apply(this, args)
    if (how === 'UnknownError' || how === 'QuotaExceededError') instead(request, gone(how))
    if (how === 'closed') request.addEventListener('success', () => later(() => close(request.result), 0))
    if (how === 'never') swallow(request, 'success', 'error')
    return request
  }

  const begin = IDBDatabase.prototype.transaction
  IDBDatabase.prototype.transaction = function (...args) {
    const how = turn('storage', `transaction ${args[0]}`)
    if (how === 'InvalidStateError' || how === 'UnknownError') throw gone(how)
    if (how === 'closed') close(this)
    const tx = begin.apply(this, args)
    const put = []
    tx.ours = put
    tx.addEventListener('complete', () => put.forEach((name) => fault.completed.add(name)))
    if (tx.mode === 'readwrite' && tx.durability !== 'strict') fault.relaxed.add([...tx.objectStoreNames].join())
    if (how === 'QuotaExceededError') later(() => abortWith(tx, gone(how)), 0)
    if (how === 'never') swallow(tx, 'complete', 'abort', 'error')
    if (how === 'unheard') tx.addEventListener('complete', (event) => { event.stopImmediatePropagation(); tx.dispatchEvent(made('abort')) })
    return tx
  }

  for (const name of ['get', 'getKey', 'getAll', 'getAllKeys', 'count', 'put', 'delete', 'clear']) {
    const real = IDBObjectStore.prototype[name]
    IDBObjectStore.prototype[name] = function (...args) {
      const how = turn('storage', `${name} ${this.name}`)
      if (how === 'InvalidStateError') throw gone(how)
      const request = real.apply(this, args)
      if (name === 'put' && this.transaction.ours) this.transaction.ours.push(args[0]?.digest ?? args[0]?.sha256)
      if (how === 'UnknownError') instead(request, gone(how))
      if (how === 'QuotaExceededError') abortWith(this.transaction, gone(how))
      if (how === 'closed') { abortWith(this.transaction, gone('AbortError')); close(this.transaction.db) }
      if (how === 'never') swallow(request, 'success', 'error')
      if (how === 'unheard') instead(request, gone('AbortError'))
      return request
    }
  }

  for (const name of ['digest', 'sign', 'verify', 'importKey', 'exportKey', 'generateKey']) {
    const real = SubtleCrypto.prototype[name]
    SubtleCrypto.prototype[name] = function (...args) {
      const how = turn('crypto', name)
      if (how === 'throws') throw gone('NotSupportedError')
      return how ? Promise.reject(gone('OperationError')) : real.apply(this, args)
    }
  }

  const bytes = Blob.prototype.arrayBuffer
  Blob.prototype.arrayBuffer = async function () {
    const how = turn('file', this instanceof File ? 'photo' : 'answer')
    if (how === 'rejects') throw gone('NotReadableError')
    const whole = await bytes.apply(this)
    return how === 'empty' ? new ArrayBuffer(0) : how === 'short' ? whole.slice(0, whole.byteLength - 1) : whole
  }

  const answer = (status, type, body, asked = '') => new Response([204, 304].includes(status) ? null : body, // in JSON as the server itself
    { status, headers: { 'Content-Type': type, 'Seamwalk-Answer': asked } })
  const nonce = (args) => args[1]?.headers?.['Seamwalk-Ask']
  const forge = (receipt) => receipt.replace(/\.(.)([^.]*)$/, (_, first, rest) => `.${first === 'A' ? 'B' : 'A'}${rest}`)
  const altered = async (reply, change) => {
    const text = await reply.text()
    const body = text.startsWith('{') ? text.replace(/"receipt":\s*"([^"]+)"/g, (_, receipt) => `"receipt":"${change(receipt)}"`) : text
    return new Response([204, 304].includes(reply.status) ? null : body, { status: reply.status, headers: reply.headers })
  }
  let old = ''
  const real = window.fetch
  window.fetch = async function (...args) {
    const how = turn('fetch', `${args[1]?.method ?? 'GET'} ${String(args[0]).split('?')[0].replace(/[0-9a-f-]{30,}/g, '…')}`)
    if (how === 'rejects') throw new TypeError('no connection')
    if (how === 'never') {
      return new Promise((_, reject) => { args[1]?.signal?.addEventListener('abort', () => reject(gone('AbortError'))) })
    }
    const asked = { 'Seamwalk-Answer': args[1]?.headers?.['Seamwalk-Ask'] ?? '' }
    if (how.endsWith('HTML')) return answer(Number(how.slice(0, 3)), 'text/html', '<html>another place</html>', {})
    if (how === '200 JSON') return answer(200, 'application/json', NOTHING, {})
    if (how === '200 without receipt') return answer(200, 'application/json', NOTHING, asked)
    if (/^\d+$/.test(how)) return answer(Number(how), 'application/json', '{"error":{"code":"lie","field":"","value":"","message":"no","way_out":""}}', asked)
    const reply = await real.apply(this, args)
    if (how === 'answer lost') throw new TypeError('cut')
    if (how === 'cut') return new Response(new ReadableStream({ start(to) { to.enqueue(new Uint8Array([123])); to.error(new TypeError('cut')) } }), reply)
    if (how === 'forged receipt') return altered(reply, forge)
    if (how === 'receipt of another') return altered(reply, () => old)
    const copy = old ? null : await reply.clone().text().catch(() => '')
    if (copy) old = /"receipt":\s*"([^"]+)"/.exec(copy)?.[1] ?? ''
    return reply
  }
})()
