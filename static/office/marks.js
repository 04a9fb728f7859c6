// The mark beside each state of a link: never the colour alone.

/** @type {Record<string, string>} */
export const MARKS = { open: '○', used: '✓', expired: '‖', withdrawn: '✕' }
