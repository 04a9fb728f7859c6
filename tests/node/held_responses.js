// The browser's store of responses, in memory, on a disk with so much room (Cache, WHATWG Service Workers: `put` that finds
// no room rejects with `QuotaExceededError`).

/** @type {Map<string, Map<string, number>>} store -> address -> bytes */
const stores = new Map()
/** `room` of the whole disk; `tried`: how often room was looked for; `slow`: ms that each piece takes. */
export const disk = { room: Infinity, tried: 0, slow: 0, given: () => {}, get size() { return sizeOf('seamwalk-room') } }

/** @param {string} name bytes of one store */
function sizeOf(name) {
  return [...(stores.get(name)?.values() ?? [])].reduce((sum, size) => sum + size, 0)
}

export const responses = {
  async open(/** @type {string} */ name) {
    if (name.startsWith('seamwalk-room-tried') && !stores.has(name)) disk.tried += 1
    const store = stores.get(name) ?? new Map()
    stores.set(name, store)
    return {
      keys: async () => [...store.keys()].map((path) => ({ url: `https://phone${path}` })),
      delete: async (/** @type {string} */ path) => store.delete(path),
      put: async (/** @type {string} */ path, /** @type {Response} */ response) => {
        const { byteLength } = await response.arrayBuffer()
        if (disk.slow) await new Promise((resolve) => { setTimeout(resolve, disk.slow) })
        const taken = [...stores.keys()].reduce((sum, one) => sum + sizeOf(one), 0)
        if (taken + byteLength > disk.room) throw new DOMException('made to fail', 'QuotaExceededError')
        store.set(path, byteLength)
      },
    }
  },
  keys: async () => [...stores.keys()],
  async delete(/** @type {string} */ name) {
    if (name === 'seamwalk-room') disk.given()
    return stores.delete(name)
  },
}

/** As at the start of a test. */
export function emptied() {
  stores.clear()
  Object.assign(disk, { room: Infinity, tried: 0, slow: 0, given: () => {} })
}
