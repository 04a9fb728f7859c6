// A phone's database as a file and back, by IndexedDB alone: no code of the app, which may have changed since.
// Bytes and keys are told as {"$bytes": base64}, {"$view": base64} and {"$key": JWK}; absent as {"$absent": true}.

const LEFT_OUT = ['ballast'] // throw-away bytes

const settled = (asked) => new Promise((resolve, reject) => {
  asked.onsuccess = () => resolve(asked.result)
  asked.onerror = () => reject(asked.error)
})
const base64 = (bytes) => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
const unbase64 = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))

async function told(value) {
  if (value === undefined) return { $absent: true }
  if (value instanceof ArrayBuffer) return { $bytes: base64(new Uint8Array(value)) }
  if (ArrayBuffer.isView(value)) return { $view: base64(value) }
  if (value instanceof CryptoKey) return { $key: await crypto.subtle.exportKey('jwk', value) }
  if (Array.isArray(value)) return Promise.all(value.map(told))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(await Promise.all(Object.entries(value).map(async ([name, one]) => [name, await told(one)])))
}

async function untold(value) {
  if (value === null || typeof value !== 'object') return value
  if (Array.isArray(value)) return Promise.all(value.map(untold))
  if ('$absent' in value) return undefined
  if ('$bytes' in value) return unbase64(value.$bytes).buffer
  if ('$view' in value) return unbase64(value.$view)
  if ('$key' in value) {
    const { ext, ...jwk } = value.$key
    return crypto.subtle.importKey('jwk', jwk, { name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign'])
  }
  return Object.fromEntries(await Promise.all(Object.entries(value).map(async ([name, one]) => [name, await untold(one)])))
}

/** Everything: `{version, stores: [{name, keyPath, indexes, rows: [[key, value]]}]}`. */
export async function dump(name) {
  const db = await settled(indexedDB.open(name))
  const stores = []
  for (const one of [...db.objectStoreNames]) {
    const store = db.transaction(one).objectStore(one)
    const indexes = [...store.indexNames].map((index) => store.index(index))
      .map(({ name, keyPath, unique, multiEntry }) => ({ name, keyPath, unique, multiEntry }))
    const [keys, values] = await Promise.all([settled(store.getAllKeys()), settled(store.getAll())])
    const rows = LEFT_OUT.includes(one) ? [] : keys.map((key, n) => [key, values[n]])
    stores.push({ name: one, keyPath: store.keyPath, indexes, rows: await told(rows) })
  }
  db.close()
  return { version: db.version, stores }
}

/** The database made as it was, at its own version, where there is none yet. */
export async function load(name, { version, stores }) {
  const asked = indexedDB.open(name, version)
  asked.onupgradeneeded = () => {
    for (const { name: one, keyPath, indexes } of stores) {
      const store = asked.result.createObjectStore(one, keyPath === null ? {} : { keyPath })
      for (const { name: index, keyPath: path, ...how } of indexes) store.createIndex(index, path, how)
    }
  }
  const db = await settled(asked)
  for (const { name: one, keyPath, rows } of stores) {
    const values = await untold(rows)
    if (!values.length) continue
    const tx = db.transaction(one, 'readwrite')
    const done = new Promise((resolve, reject) => { tx.oncomplete = resolve; tx.onabort = () => reject(tx.error) })
    for (const [key, value] of values) tx.objectStore(one).put(value, keyPath === null ? key : undefined)
    await done
  }
  db.close()
}
