// Give the finished file to the phone: by its own way of sharing where that takes such a file, else as a download.

import { Trouble } from '../words/trouble.js'

/** @param {File} file @returns {boolean} */
export function canShare(file) {
  return typeof navigator.share === 'function' && navigator.canShare?.({ files: [file] }) === true
}

/** @param {File} file @returns {Promise<boolean>} false where the person thought better of it @throws {Trouble} `copy.not_shared` */
export async function share(file) {
  try {
    await navigator.share({ files: [file], title: file.name })
    return true
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === 'AbortError') return false
    throw new Trouble('copy.not_shared', { field: 'copy', value: file.name, what: String(fault) })
  }
}

/** @param {File} file @returns {() => void} gives the address back, once the browser has taken the file */
export function download(file) {
  const link = Object.assign(document.createElement('a'), { href: URL.createObjectURL(file), download: file.name })
  document.body.append(link)
  link.click()
  link.remove()
  return () => URL.revokeObjectURL(link.href)
}
