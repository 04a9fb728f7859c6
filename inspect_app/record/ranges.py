"""Ranges of whole numbers, both ends in: ``[[1, 16], [20, 24]]``. Their cost never grows with the numbers."""


def merged(ranges: list) -> list:
    """The same numbers as the fewest ranges in order; a range that ends before it begins holds nothing."""
    found: list = []
    for low, high in sorted([(low, high) for low, high in ranges if low <= high]):
        if found and low <= found[-1][1] + 1:
            found[-1][1] = max(found[-1][1], high)
        else:
            found.append([low, high])
    return found


def holds(ranges: list, number: int) -> bool:
    return any(low <= number <= high for low, high in ranges)


def common(ranges: list, low: int, high: int) -> list:
    """What of merged ``ranges`` lies from ``low`` to ``high``."""
    return merged([[max(low, one), min(high, other)] for one, other in ranges])


def without(ranges: list, gone: list) -> list:
    """What of merged ``ranges`` lies in none of ``gone``."""
    cut, left, first = merged(gone), [], 0
    for low, high in merged(ranges):
        while first < len(cut) and cut[first][1] < low:
            first += 1
        at = first
        while at < len(cut) and cut[at][0] <= high:
            if low < cut[at][0]:
                left.append([low, cut[at][0] - 1])
            low = cut[at][1] + 1
            at += 1
        if low <= high:
            left.append([low, high])
    return left


def count(ranges: list) -> int:
    return sum([high - low + 1 for low, high in ranges])
