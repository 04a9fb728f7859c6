"""Sums of the probabilities of a count, at most so many and more: binomial and hypergeometric, in plain floats.

Neighbouring terms stand in a simple ratio. The sum starts from the most likely count, called 1, and goes both ways
until the terms no longer matter; divided by all of them, nothing overflows, and no factorial is ever needed.
"""

NEGLIGIBLE = 1e-18


def binomial(n: int, most: int, share: float) -> tuple:
    """``(at most, more)``: the probabilities that of ``n`` looked at, each bad with the chance ``share`` (0 to 1), at
    most ``most`` are bad, and more."""
    if share <= 0.0:
        return _all_at(0, most)
    if share >= 1.0:
        return _all_at(n, most)
    odds = share / (1.0 - share)

    def rise(k: int) -> float:  # term k + 1 over term k
        return float(n - k) / float(k + 1) * odds

    return _split(0, n, min(int((n + 1) * share), n), most, rise)


def hypergeometric(lot: int, n: int, most: int, defectives: int) -> tuple:
    """The same of ``n`` taken from a ``lot`` with so many ``defectives`` in it, none put back."""
    least, greatest = max(0, n - (lot - defectives)), min(n, defectives)

    def rise(k: int) -> float:
        return (float(defectives - k) * float(n - k)) / (float(k + 1) * float(lot - defectives - n + k + 1))

    likely = int((float(n) + 1.0) * (float(defectives) + 1.0) / (float(lot) + 2.0))
    return _split(least, greatest, min(max(likely, least), greatest), most, rise)


def _all_at(count: int, most: int) -> tuple:
    return (1.0, 0.0) if count <= most else (0.0, 1.0)


def _split(least: int, greatest: int, likely: int, most: int, rise) -> tuple:  # type: ignore[no-untyped-def]
    low, high = (1.0, 0.0) if likely <= most else (0.0, 1.0)
    term, k = 1.0, likely
    while k < greatest:
        term = term * rise(k)
        k += 1
        if k <= most:
            low += term
        else:
            high += term
        if term == 0.0 or (k > most and term < NEGLIGIBLE * high):
            break
    term, k = 1.0, likely
    while k > least:
        k -= 1
        term = term / rise(k)
        if k <= most:
            low += term
        else:
            high += term
        if term == 0.0 or (k <= most and term < NEGLIGIBLE * low):
            break
    return low / (low + high), high / (low + high)
