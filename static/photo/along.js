// Pictures that somebody else took, kept on this phone for a place without signal. They are the server's: when room runs
// short they go before anything else.

import { currentPerson } from '../people/current.js'
import { withDb } from '../storage/database.js'
import { withRoom } from '../storage/room.js'
import { photoBytes } from './read.js'
import { dropUnnamed, writeChunks } from './rows.js'

/** Which of these are not on this phone. @param {string[]} names sha256 each @returns {Promise<string[]>} */
export async function elsewhere(names) {
  const found = []
  for (const name of new Set(names)) {
    if (!(await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.getKey([name, 0])))) found.push(name)
  }
  return found
}

/**
 * @param {string} sha256 @param {string} job
 * @throws {import('../words/trouble.js').Trouble} `outbox.photo_elsewhere`, `outbox.disk_full`, `sync.offline`
 */
export async function takeAlong(sha256, job) {
  const person = await currentPerson()
  const { bytes, type } = await photoBytes(sha256, job)
  const row = { person, sha256, size: bytes.byteLength, type, width: null, height: null, at: new Date().toISOString(), fetched: true }
  try {
    await withRoom('photo', async () => {
      const chunks = await writeChunks(sha256, bytes.buffer, false)
      await withDb(['photos'], 'readwrite', async (tx) => {
        if (!(await tx.store.getKey([person, sha256]))) await tx.store.put({ ...row, chunks }) // what somebody here took stays theirs
      })
    })
  } catch (fault) {
    await dropUnnamed(sha256).catch(() => {})
    throw fault
  }
}
