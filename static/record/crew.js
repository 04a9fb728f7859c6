// When two spellings name one crew. Pure.

/** Capitals and blanks make no other crew, as in the record. @param {string | null | undefined} one @param {string | null | undefined} other */
export function sameCrew(one, other) {
  return plainCrew(one) === plainCrew(other)
}

/** A crew's name for comparing; '' where nobody was named. @param {string | null | undefined} crew */
export function plainCrew(crew) {
  return (crew ?? '').trim().replace(/\s+/g, ' ').toLowerCase()
}
