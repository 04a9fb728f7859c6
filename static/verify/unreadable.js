/** What was given cannot be read at all: `code` of the words `verify_page.unreadable.CODE`, with its facts. */
export class Unreadable extends Error {
  /** @param {string} code @param {Record<string, any>} [facts] */
  constructor(code, facts = {}) {
    super(code)
    this.code = code
    this.facts = facts
  }
}
