// Which of a definition's items are asked at a place, and which item an answer speaks of. Pure.

/**
 * Whether a definition, or one of its items, speaks of what is fastened there. Without `applies` it always does.
 * @param {{applies?: {attachment?: string[]}}} thing @param {{attachment?: string} | null | undefined} assembly
 */
export function applies(thing, assembly) {
  const wanted = thing.applies?.attachment
  return !wanted || wanted.includes(assembly?.attachment ?? '')
}

/**
 * The items asked under an assembly, in the definition's order. Without an assembly (a whole walk over several)
 * every item is asked.
 * @param {any} definition compiled @param {any} assembly
 */
export function itemsFor(definition, assembly) {
  return definition.items.filter((/** @type {any} */ item) => !assembly || applies(item, assembly))
}

/** An item of a definition by its id; null where it has none. @param {any} definition @param {string} id */
export function findItem(definition, id) {
  return definition?.items.find((/** @type {any} */ item) => item.id === id) ?? null
}

/** Items that one press answers together when nothing is wrong. @param {any} item compiled */
export function isQuick(item) {
  return item.quick === true
}

/**
 * Whether answering needs one roof area at a whole walk: the rule reads the assembly or the area.
 * @param {any} item compiled
 */
export function needsArea(item) {
  const sources = Object.values(item.rule?.inputs ?? {})
  return sources.some((source) => typeof source === 'string' && /^(assembly|area)\./.test(source))
}
