"""Base64url without padding (RFC 4648, 5), written out: both interpreters read and write the same."""

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"


def encode(data: bytes) -> str:
    told = []
    for at in range(0, len(data), 3):
        three = data[at : at + 3]
        number = 0
        for place in range(3):
            number = number * 256 + (three[place] if place < len(three) else 0)
        told += [LETTERS[number // 64**place % 64] for place in (3, 2, 1, 0)][: len(three) + 1]
    return "".join(told)


def decode(text: str) -> "bytes | None":
    """The bytes, or None for what is no base64url."""
    data, number, bits = [], 0, 0
    for letter in text:
        value = LETTERS.find(letter)
        if value < 0:
            return None
        number, bits = number * 64 + value, bits + 6
        if bits >= 8:
            bits -= 8
            data.append(number // 2**bits)
            number = number % 2**bits
    return None if bits == 6 or number else bytes(data)
