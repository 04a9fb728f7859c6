// What the server says of having been set back to a backup, as it told last; heeded by `sync/restored.js`.

import { readMeta, writeMeta } from '../storage/meta.js'

/** @param {unknown} told of an answer @returns {Promise<void>} */
export async function noteRestorations(told) {
  if (!Array.isArray(told) || !told.length) return
  const known = await readMeta(['restorations'])
  if (JSON.stringify(known) !== JSON.stringify(told)) await writeMeta(['restorations'], told)
}
