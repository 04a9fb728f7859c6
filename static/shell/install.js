// Keeping the app and its data on the phone: the home-screen icon, and the browser's promise not to evict.

import { isApple, isStandalone } from './system.js'
import { readMeta, writeMeta } from '../storage/meta.js'

/** @type {any} */
let prompt = null

/** Listen for the browser's offer to install; call once at start. */
export function startInstall() {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    prompt = event
    window.dispatchEvent(new CustomEvent('seamwalk:install'))
  })
  addEventListener('appinstalled', () => askPersist().catch(() => {})) // browsers promise more to what is installed
}

/**
 * How the app is running. `by_hand`: this phone installs only from the browser's own share menu. `kept`: the
 * browser's answer to the plea not to evict, null before it was asked.
 */
export async function installState() {
  const standalone = isStandalone()
  return { standalone, offered: prompt !== null, by_hand: isApple() && !standalone, kept: (await readMeta(['persist']))?.kept ?? null }
}

/** Show the browser's offer. @returns {Promise<boolean>} whether it was taken */
export async function install() {
  if (!prompt) return false
  prompt.prompt()
  const { outcome } = await prompt.userChoice
  prompt = null
  return outcome === 'accepted'
}

/** Ask the browser not to evict our data, and keep its answer. @returns {Promise<boolean>} */
export async function askPersist() {
  const kept = (await navigator.storage?.persisted?.()) || (await navigator.storage?.persist?.()) || false
  await writeMeta(['persist'], { kept, at: new Date().toISOString() })
  return kept
}
