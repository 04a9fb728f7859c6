// A short sound with the full-width change, so that a person who looks at the roof knows it is saved.

/** @type {AudioContext | null} */
let context = null

export function tone() {
  try {
    context ??= new AudioContext()
    const sound = context.createOscillator()
    const volume = context.createGain()
    volume.gain.value = 0.08
    sound.frequency.value = 660
    sound.connect(volume).connect(context.destination)
    sound.start()
    sound.stop(context.currentTime + 0.12)
  } catch { /* a phone without sound still shows the change */ }
}
