// `navigator.locks` of one browser: exclusive, in order of asking. What a page holds ends with the page, not with its sleep.

export class Locks {
  /** @type {{page: any, start: () => void}[]} waiting, oldest first */
  #waiting = []
  /** @type {any} */
  #holder = null

  /** @param {any} page */
  of(page) {
    return { request: (_name, { signal }, work) => new Promise((resolve, reject) => {
      const turn = { page, start: () => {
        this.#holder = page
        const finish = (settle) => (value) => {
          if (this.#holder === page) this.#pass()
          settle(value)
        }
        work().then(finish(resolve), finish(reject))
      } }
      signal?.addEventListener('abort', () => {
        if (!this.#waiting.includes(turn)) return
        this.#waiting = this.#waiting.filter((one) => one !== turn)
        reject(signal.reason)
      })
      if (this.#holder) this.#waiting.push(turn)
      else turn.start()
    }) }
  }

  /** @param {any} page that is gone */
  leave(page) {
    this.#waiting = this.#waiting.filter((one) => one.page !== page)
    if (this.#holder === page) this.#pass()
  }

  #pass() {
    const next = this.#waiting.shift()
    this.#holder = next?.page ?? null
    if (next) next.page.phone.clock.after(0, next.start, next.page)
  }
}
