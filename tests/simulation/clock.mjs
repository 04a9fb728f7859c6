// The one clock and the one list of what happens next. Everything that a page would wait for (a timer, the disk, a
// signature, an answer) is a task here, so that one thread of numbers decides every order. A task belongs to an owner
// (a page, a disk, the world): a dead owner's tasks never run, a frozen one's wait.

const drained = globalThis.setImmediate

/** @typedef {{dead?: boolean, frozen?: boolean, held?: any[], phone?: any}} Owner */

export class Clock {
  now = 0 // ms since the beginning
  done = 0
  /** @type {Owner} whose task runs, or ran last */
  owner = {}
  #order = 0
  /** @type {any[]} a heap by time, then by order */
  #tasks = []

  /** @param {number} wait ms @param {() => void} work @param {Owner} owner @returns {any} the task, to be cancelled */
  after(wait, work, owner) {
    const task = { time: this.now + Math.max(0, wait), order: this.#order++, work, owner, cancelled: false }
    this.#push(task)
    return task
  }

  /** Do something from outside in an owner's name. @template T @param {Owner} owner @param {() => T} work @returns {T} */
  as(owner, work) {
    this.owner = owner // also for what goes on once all promises have gone on
    return work()
  }

  /** Nothing happens for so long, as on a phone in a pocket. @param {number} wait ms */
  sleep(wait) {
    this.now += wait
  }

  /**
   * Let things happen until `done()`, so many tasks, or so many ms, whichever comes first.
   * @param {{tasks?: number, ms?: number, done?: () => boolean}} limit
   */
  async run({ tasks = Infinity, ms = Infinity, done = () => false }) {
    const end = this.now + ms
    await quiet()
    while (tasks > 0 && !done()) {
      const task = this.#tasks[0]
      if (!task || task.time > end) break
      this.#pop()
      if (task.cancelled || task.owner.dead) continue
      if (task.owner.frozen) {
        task.owner.held.push(task)
        continue
      }
      this.now = Math.max(this.now, task.time)
      this.owner = task.owner
      tasks -= 1
      this.done += 1
      task.work()
      await quiet()
    }
    if (tasks > 0 && ms !== Infinity && !done()) this.now = Math.max(this.now, end)
  }

  /** What waited while its owner was frozen. @param {Owner} owner */
  thaw(owner) {
    owner.frozen = false
    for (const task of owner.held ?? []) this.#push(task)
    owner.held = []
  }

  #push(/** @type {any} */ task) {
    const heap = this.#tasks
    let at = heap.push(task) - 1
    while (at > 0) {
      const above = (at - 1) >> 1
      if (!before(task, heap[above])) break
      heap[at] = heap[above]
      at = above
    }
    heap[at] = task
  }

  #pop() {
    const heap = this.#tasks
    const last = heap.pop()
    if (!heap.length) return
    let at = 0
    for (;;) {
      let below = 2 * at + 1
      if (below >= heap.length) break
      if (below + 1 < heap.length && before(heap[below + 1], heap[below])) below += 1
      if (!before(heap[below], last)) break
      heap[at] = heap[below]
      at = below
    }
    heap[at] = last
  }
}

/** @param {any} one @param {any} other */
function before(one, other) {
  return one.time < other.time || (one.time === other.time && one.order < other.order)
}

/** Every promise that could go on has gone on. */
function quiet() {
  return new Promise((resolve) => drained(resolve))
}
