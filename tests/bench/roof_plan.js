// What a person waits for on the roof plan, timed in the page: from the touch until the picture stands on the screen.

window.wait = {
  painted: () => new Promise((done) => requestAnimationFrame(() => {
    const after = new MessageChannel()
    after.port1.onmessage = () => done(performance.now())
    after.port2.postMessage(0)
  })),

  /** From one address to another, until what is wanted is painted. */
  open: async ([hash, wanted]) => {
    const start = performance.now()
    location.hash = hash
    await new Promise((done, late) => {
      const look = () => {
        if (document.querySelector(wanted)) done()
        else if (performance.now() - start > 60000) late(new Error(`${wanted} never came: ${document.body.innerText.slice(0, 300)}`))
        else requestAnimationFrame(look)
      }
      look()
    })
    return await window.wait.painted() - start
  },

  press: async (name) => {
    const start = performance.now()
    document.querySelector(`[data-name="${name}"]`).click()
    return await window.wait.painted() - start
  },

  /** The slowest of a finger's steps, the last one included, on which the plan is drawn again. */
  drag: async (steps) => {
    const plan = document.querySelector('[data-name="roof-plan"]')
    const box = plan.getBoundingClientRect()
    const at = (type, n) => plan.dispatchEvent(new PointerEvent(type, { pointerId: 7, bubbles: true, clientX: box.x + 120 + 9 * n, clientY: box.y + 120 + 5 * n }))
    plan.setPointerCapture = () => {} // no real finger stands behind the number
    at('pointerdown', 0)
    let slowest = 0
    for (let n = 1; n <= steps + 1; n += 1) {
      const start = performance.now()
      at(n > steps ? 'pointerup' : 'pointermove', Math.min(n, steps))
      slowest = Math.max(slowest, await window.wait.painted() - start)
    }
    return slowest
  },
}
