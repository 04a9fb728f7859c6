// A photo kept on the phone and declared in an entry: whose place it shows, and in which role.

import { keepPhoto } from '../photo/keep.js'
import { enter } from '../frame/enter.js'

/**
 * @param {{job: string, record: any, walk: any, station: any, answer?: string | null, role: string, file: File,
 *   source: 'camera' | 'picked', position: any, draft: string, leg?: {lot: string, area: string, panel: number}}} what `draft`: key of the one that waits for it, dropped with its
 *   entry; `leg`: whose whole open leg it shows
 * @returns {Promise<string>} the photo's sha256
 */
export async function enterPhoto({ job, record, walk, station, answer = null, role, file, source, position, draft, leg }) {
  const { sha256, size, type, width, height } = await keepPhoto(file)
  await enter({ job, kind: 'photo', subject: sha256, replaces: record.photos[sha256]?.heads ?? [], draft, body: {
    walk: walk.id, station: station?.id ?? null, answer, role, sha256, size, type, source,
    width: width ?? undefined, height: height ?? undefined, position: position ?? undefined, ...leg } })
  return sha256
}
