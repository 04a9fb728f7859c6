// How long a link may be good, offered in steps: a short life is the usual one.

export const DAYS = [1, 7, 30, 90]
