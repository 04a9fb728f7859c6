"""Work that is kept, told outside the browser, and looked for again."""

import time

from tests.browser.phone import Phone, entry, picture

SAID = {"kept", "outbox.disk_full", "outbox.storage_stopped"}
PHOTO = 900_000  # bytes


def tried(phone: Phone, job: str, number: int, saved: dict[str, int]) -> set[str]:
    """Keep a photo and an entry. Returns what was said: "kept", or codes. What was said to be saved is added to
    ``saved``: a photo by its digest with its size, an entry by its digest with 0."""
    keep = "return keepPhoto(%s).then((kept) => kept.sha256, (fault) => '!' + fault.code)"
    photo = phone.run(keep % picture(number, PHOTO))
    keep = "return keepEntry(arg).then((kept) => kept.digest, (fault) => '!' + fault.code)"
    text = phone.run(keep, entry(job, f"{number}"))
    saved |= {name: size for name, size in ((photo, PHOTO), (text, 0)) if not name.startswith("!")}
    return {name[1:] if name.startswith("!") else "kept" for name in (photo, text)}


def stand_soon(phone: Phone, saved: dict[str, int], patience: int) -> bool:
    """As ``stand``, within so many seconds."""
    end = time.monotonic() + patience
    while not (there := stand(phone, saved)) and time.monotonic() < end:
        time.sleep(1)
    return there


def stand(phone: Phone, saved: dict[str, int]) -> bool:
    """All that was saved is there to the byte; False while the storage cannot be read."""
    read = """return Promise.all(arg.map((name) => photoBytes(name).then(({ bytes }) => bytes.length))).then(
      (sizes) => sizes, (fault) => fault.code)"""
    photos = [name for name, size in saved.items() if size]
    sizes = phone.run(read, photos)
    if isinstance(sizes, str) and sizes in SAID:
        print(f"not to be read just now: {sizes}")
        return False
    assert sizes == [PHOTO] * len(photos), sizes
    assert {name for name, size in saved.items() if not size} <= {row["digest"] for row in phone.rows("entries")}
    return True
