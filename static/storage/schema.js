// The phone's database, version 1. Stores are only ever added; rows of signed bytes are never rewritten.
//
// Every row belongs to a person but the photo bytes, which are named by what they contain.
//   keys          [person, kid] -> CryptoKey, alone in its row: a value that holds a key beside other things
//                 has been lost whole by a browser that could not clone the key
//   people        id -> who they are, their key's name, their PIN
//   drafts        [person, key] -> what is not yet signed
//   entries       [person, digest] -> signed tokens, own and pulled
//   chains        [kid, job] -> the last entry of each chain
//   outbox        [person, what, job, name] -> what the server has not yet confirmed
//   photos        [person, sha256] -> size, type, digests of its chunks
//   photo_chunks  [sha256, n] -> 256 KiB of bytes and their digest
//   receipts      [person, what, job, name] -> the server's signed word
//   meta          cursor, pinned server key, definitions by digest, jobs
//   ballast       n -> throw-away bytes, freed when the disk is full

export const NAME = 'seamwalk'
export const VERSION = 1

/** @type {Record<string, string[] | string | null>} store name -> key path, or null for keys beside the value */
const STORES = {
  keys: null,
  people: 'id',
  drafts: ['person', 'key'],
  entries: ['person', 'digest'],
  chains: ['kid', 'job'],
  outbox: ['person', 'what', 'job', 'name'],
  photos: ['person', 'sha256'],
  photo_chunks: ['photo', 'n'],
  receipts: ['person', 'what', 'job', 'name'],
  meta: null,
  ballast: null,
}

/** @param {any} db @param {number} from version found on the phone */
export function upgrade(db, from) {
  if (from >= 1) return
  for (const [name, keyPath] of Object.entries(STORES)) {
    const store = db.createObjectStore(name, keyPath === null ? {} : { keyPath })
    if (name === 'entries') store.createIndex('job', ['person', 'job'])
  }
}
