// The app fetched anew from nothing, where an update will not come or files are damaged. Records, photos and drafts lie in
// the database, which this never touches.

import { Trouble } from '../words/trouble.js'
import { offered } from './offered.js'

const OURS = /^seamwalk-(room|spare)/ // of the page: room held, and second copies of what is unsent

/**
 * Remove caches and workers and load afresh. Only while our server answers: else the app would be gone from the phone
 * until there is signal.
 * @throws {Trouble} `shell.repair_offline`
 */
export async function repairApp() {
  if (!(await offered())) throw new Trouble('shell.repair_offline', { field: 'server', value: location.host })
  for (const name of await caches.keys()) if (!OURS.test(name)) await caches.delete(name)
  for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister()
  location.reload()
}
