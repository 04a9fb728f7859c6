// One print speaks one language. The screen stays in it afterwards: a page printed late would else change its words.

import { language, setLanguage } from '../words/say.js'

/** @param {string} code `en` or `es` @returns {Promise<void>} once the browser has taken the page */
export async function printIn(code) {
  if (code !== language()) setLanguage(code)
  await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))
  print()
}
