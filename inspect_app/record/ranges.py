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
    left = merged(ranges)
    for low, high in gone:
        cut: list = []
        for one, other in left:
            cut += [[one, min(other, low - 1)], [max(one, high + 1), other]] if low <= high else [[one, other]]
        left = merged(cut)
    return left


def count(ranges: list) -> int:
    return sum([high - low + 1 for low, high in ranges])
