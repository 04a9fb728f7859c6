// An error a person will read: a key of static/words, and the facts its sentence needs.

export class Trouble extends Error {
  /**
   * @param {string} code key of the words, e.g. `people.wrong_pin`
   * @param {Record<string, string | number>} [facts] field, value and what the sentence names
   * @param {{message?: string, wayOut?: string}} [server] the server's own words, where it gave some
   */
  constructor(code, facts = {}, server = {}) {
    super(server.message ?? code)
    this.name = 'Trouble'
    this.code = code
    this.facts = facts
    this.wayOut = server.wayOut ?? null
    this.fromServer = server.message !== undefined
  }
}
