// What one page of the app is made of, but for its screens: the modules themselves, as `main.js` starts them.

export { signIn, signOut, unlock, phonePeople, current } from '../../static/people/session.js'
export { enrol } from '../../static/people/device.js'
export { keepEntry } from '../../static/outbox/keep.js'
export { counts } from '../../static/outbox/counts.js'
export { outboxItems, sendAgain } from '../../static/outbox/items.js'
export { keepPhoto } from '../../static/photo/keep.js'
export { photoBytes } from '../../static/photo/read.js'
export { sendNow, startSync, status } from '../../static/sync/engine.js'
export { saveDraft, loadDraft, dropDraft } from '../../static/storage/drafts.js'
export { capable } from '../../static/shell/capable.js'
