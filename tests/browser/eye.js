// What a person with large text, thick gloves, bright sun or another language would stumble over on the screen
// shown: `eye.faults()` gives one line for each. `eye.words` {"en": [...], "es": [...]}: texts only of that language.

const eye = window.eye = {}
const TARGET = 48 // px, of the app's own rule; WCAG 2.2 SC 2.5.5 asks for 44
const RATIO = 7 // WCAG 2.2 SC 1.4.6, asked of large text too
const CONTROLS = 'a[href], button, input, textarea, summary, select, canvas, svg.pick, [tabindex="0"], img[data-name]'
const GLARE = 1.8 // of 2 at most, where the sun on the glass is as bright as the screen's white; our own choice, no source
const KEY = /^[a-z][a-z_]*(\.[\w@]+)+$/

eye.faults = () => [...eye.wide(), ...eye.small(), ...eye.pale(), ...eye.untold()]

const shown = (one) => one.checkVisibility({ opacityProperty: true, visibilityProperty: true })
const named = (one) => `<${one.localName} ${one.getAttribute('class') ?? ''}> “${(one.textContent || one.id || '').trim().slice(0, 40)}”`

function texts() {
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  const found = []
  while (walk.nextNode()) {
    const node = walk.currentNode
    if (node.data.trim() && !['SCRIPT', 'STYLE', 'NOSCRIPT'].includes(node.parentElement.tagName) && shown(node.parentElement)) found.push(node)
  }
  return found
}

/** The page wider than the screen, and words that leave the screen or the box they stand in. */
eye.wide = () => {
  const root = document.documentElement
  const faults = root.scrollWidth > root.clientWidth ? [`wide: the page by ${root.scrollWidth - root.clientWidth} px`] : []
  for (const node of texts()) {
    const range = document.createRange()
    range.selectNodeContents(node)
    const box = node.parentElement.closest('.press, .problem, .working, .zone, .bay, main, .strip')?.getBoundingClientRect()
    for (const { left, right } of range.getClientRects()) {
      if (left < -1 || right > root.clientWidth + 1) faults.push(`wide: off the screen ${named(node.parentElement)}`)
      else if (box && (right > box.right + 1 || left < box.left - 1)) faults.push(`wide: out of its box ${named(node.parentElement)}`)
    }
  }
  for (const one of document.querySelectorAll('body *')) {
    if (['hidden', 'clip'].includes(getComputedStyle(one).overflowX) && one.scrollWidth > one.clientWidth + 1 && one.textContent.trim()) faults.push(`wide: cut off ${named(one)}`)
  }
  return faults
}

/** Controls smaller than a thick glove can press. */
eye.small = () => [...document.querySelectorAll(CONTROLS)].filter((one) => shown(one)).flatMap((one) => {
  const { width, height } = one.getBoundingClientRect()
  return width < TARGET || height < TARGET ? [`small: ${Math.round(width)} × ${Math.round(height)} ${named(one)}`] : []
})

const rgba = (text) => {
  const [r, g, b, a = 1] = text.match(/[\d.]+/g).map(Number)
  return { r, g, b, a }
}
const over = (top, under) => ({ r: top.r * top.a + under.r * (1 - top.a), g: top.g * top.a + under.g * (1 - top.a), b: top.b * top.a + under.b * (1 - top.a), a: 1 })

/** Relative luminance, WCAG 2.2. */
function light({ r, g, b }) {
  const [red, green, blue] = [r, g, b].map((one) => (one / 255 <= 0.04045 ? one / 255 / 12.92 : ((one / 255 + 0.055) / 1.055) ** 2.4))
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Contrast of two colours in CSS notation, WCAG 2.2: 1 to 21. `flare`: light on the glass, as a share of white. */
eye.contrast = (ink, ground, flare = 0.05) => {
  const [more, less] = [light(over(rgba(ink), rgba(ground))), light(rgba(ground))].sort((a, b) => b - a)
  return (more + flare) / (less + flare)
}

/** The ground an element stands on, of its own and its parents' fills. */
function ground(element) {
  const layers = []
  for (let one = element; one; one = one.parentElement) {
    const fill = rgba(getComputedStyle(one).backgroundColor)
    layers.push(fill)
    if (fill.a === 1) break
  }
  const { r, g, b } = layers.reduceRight((under, top) => over(top, under), { r: 255, g: 255, b: 255, a: 1 })
  return `rgb(${r}, ${g}, ${b})`
}

/** Text whose contrast is under 7:1, or lost in the sun; disabled controls and figures in drawings included. */
eye.pale = () => {
  const inks = texts().map((node) => {
    const one = node.parentElement
    if (!(one instanceof SVGElement)) return [one, getComputedStyle(one).color, ground(one)]
    const shape = one.parentElement.querySelector('polygon, circle, rect')
    return [one, getComputedStyle(one).fill, shape ? getComputedStyle(shape).fill : ground(one)]
  })
  for (const one of document.querySelectorAll('input, textarea')) if (shown(one)) inks.push([one, getComputedStyle(one).color, ground(one)])
  return inks.flatMap(([one, ink, under]) => {
    const [ratio, sun] = [eye.contrast(ink, under), eye.contrast(ink, under, 1)]
    if (ratio >= RATIO && sun >= GLARE) return []
    return [`pale: ${ratio.toFixed(1)}, in the sun ${sun.toFixed(2)}: ${ink} on ${under} ${named(one)}`]
  })
}

/** Keys and gaps instead of words, and words of the other language. */
eye.untold = () => {
  const other = { en: new Set(eye.words.es), es: new Set(eye.words.en) }
  const spoken = (one) => one.closest('[lang]').lang
  const said = texts().map((node) => [node.data, spoken(node.parentElement)])
  for (const name of ['aria-label', 'alt', 'placeholder', 'title']) {
    for (const one of document.querySelectorAll(`[${name}]`)) said.push([one.getAttribute(name), spoken(one)])
  }
  return said.map(([text, lang]) => [text.trim(), lang]).flatMap(([text, lang]) => {
    const bare = text.split(/\s+/).filter((token) => KEY.test(token.replace(/[^\w@.]/g, '').replace(/\.$/, '')))
    if (bare.length || /\{\w+\}|undefined|\bnull\b|\bNaN\b|\[object/.test(text)) return [`untold: “${text}”`]
    return other[lang].has(text) ? [`untold: not ${lang} “${text}”`] : []
  })
}
