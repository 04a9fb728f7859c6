// Writes one file of the spare copy: only a worker may write to one in its place and have it flushed. Its name is the
// worker's. It is held open as long as its page lives, so that no other window takes it for left behind.

const FOLDER = 'spare'
const AHEAD = { text: 64 * 1024, photos: 0 } // bytes of room taken ahead, for what is written once the disk is full

/** @type {any} */
let file = null
let end = 0

/** @param {'text' | 'photos'} kind @param {Uint8Array | null} bytes null: throw away all that it holds */
async function write(kind, bytes) {
  file ??= await open()
  if (!bytes) end = 0
  try {
    if (!bytes) await file.truncate(0)
    else put(bytes, end)
    end += bytes?.length ?? 0
  } catch (fault) {
    await file.truncate(end)
    throw fault
  }
  await file.flush()
  if (bytes) await takeAhead(AHEAD[kind])
}

async function open() {
  const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle(FOLDER, { create: true })
  const place = /** @type {any} */ (await folder.getFileHandle(self.name, { create: true }))
  return place.createSyncAccessHandle()
}

/** @param {Uint8Array} bytes @param {number} at */
function put(bytes, at) {
  if (file.write(bytes, { at }) !== bytes.length) throw new DOMException('written in part', 'QuotaExceededError')
}

/** @param {number} ahead bytes behind the end */
async function takeAhead(ahead) {
  const size = await file.getSize()
  if (size - end >= ahead / 2) return
  try {
    put(new Uint8Array(end + ahead - size), size)
    await file.flush()
  } catch {
    // no room for it: what is written stands
  }
}

/** @type {Promise<unknown>} */
let turn = Promise.resolve()

self.onmessage = ({ data: { kind, bytes } }) => {
  turn = turn.then(() => write(kind, bytes)).then(() => self.postMessage('done'), (fault) => self.postMessage(fault.name))
}
