// What the app does once at its start so that it is there without signal.

import { askPersist, startInstall } from './install.js'
import { startInHand } from './in_hand.js'
import { startOwnPictures } from './own_pictures.js'
import { startSecondCopy } from './second_copy.js'
import { startUpdates } from './update.js'
import { startTurning } from '../storage/turn.js'

/** Called once by the page. */
export function startShell() {
  startTurning()
  startSecondCopy()
  startInstall()
  startInHand()
  startOwnPictures()
  startUpdates().catch(() => {}) // readiness() says what is missing
  askPersist().catch(() => {})
}
