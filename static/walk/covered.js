// What a sign-off speaks of: the entries of its walk that are on this phone, and their count by outcome.

/** Digests of every version of every entry of the walk. @param {any} record @param {any} walk @returns {string[]} */
export function covered(record, walk) {
  const things = [walk, ...['stations', 'answers', 'photos'].flatMap((name) => walk[name].map((/** @type {string} */ id) => record[name][id]))]
  const digests = things.flatMap((one) => [...one.heads, ...(one.versions ?? []).map((/** @type {any} */ version) => version.digest)])
  return [...new Set(digests)].sort()
}

/** @param {any} record @param {any} walk */
export function tally(record, walk) {
  const stations = walk.stations.map((/** @type {string} */ id) => record.stations[id])
  const answers = walk.answers.map((/** @type {string} */ id) => record.answers[id])
  const answered = (/** @type {any} */ station) => answers.some((/** @type {any} */ one) => one.station === station.id)
  return {
    places: stations.filter((/** @type {any} */ one) => one.reached === 'yes').length,
    notReached: stations.filter((/** @type {any} */ one) => one.reached !== 'yes').length,
    failed: answers.filter((/** @type {any} */ one) => one.result === 'fail').length,
    unanswered: stations.filter((/** @type {any} */ one) => one.reached === 'yes' && !answered(one)).length,
  }
}
