// Shapes to start from, as a crew says them. Only what cannot be otherwise has its name; the rest is for the person.

export const FORMS = ['rectangle', 'trapezoid', 'triangle', 'l', 'free']

const PLACES = /** @type {Record<string, [number, number][]>} */ ({
  rectangle: [[0, 0], [4, 0], [4, 3], [0, 3]],
  trapezoid: [[0, 0], [4, 0], [3, 2], [1, 2]],
  triangle: [[0, 0], [4, 0], [2, 2]],
  l: [[0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]],
  free: [],
})
const NAMES = /** @type {Record<string, (string | null)[]>} */ ({ rectangle: ['eave', 'rake', 'ridge', 'rake'] })

/** @param {string} form @param {boolean} metric @returns {{form: string, points: [string, string][], edges: (string | null)[], lengths: null[]}} */
export function begin(form, metric) {
  const unit = metric ? 3 : 10
  const points = PLACES[form].map(([x, y]) => /** @type {[string, string]} */ ([String(x * unit), String(y * unit)]))
  const edges = NAMES[form] ?? points.map((_, i) => (i === 0 ? 'eave' : null))
  return { form, points, edges: [...edges], lengths: points.map(() => null) }
}
