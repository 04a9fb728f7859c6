"""What somebody else wrote, on one line of a terminal."""


def visible(text: str) -> str:
    """The first 100 signs of it, without anything that steers the terminal."""
    return "".join(letter if letter.isprintable() else "□" for letter in text)[:100]
