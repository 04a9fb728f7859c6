/**
 * An element with its attributes and children. Texts are set as text: whatever a package says is shown and never run.
 * @param {string} tag `p`, or `p.hint` with a class @param {Record<string, any> | null} [attributes] a function listens
 * @param {...(Node | string | null | undefined | false)} children
 */
export function element(tag, attributes, ...children) {
  const [name, ...classes] = tag.split('.')
  const made = document.createElement(name)
  made.classList.add(...classes)
  for (const [key, value] of Object.entries(attributes ?? {})) {
    if (typeof value === 'function') made.addEventListener(key, value)
    else if (value !== null && value !== undefined && value !== false) made.setAttribute(key, value === true ? '' : String(value))
  }
  made.append(...children.filter((one) => one !== null && one !== undefined && one !== false))
  return made
}
