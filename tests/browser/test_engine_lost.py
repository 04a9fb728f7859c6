"""A row of the phone's database is lost, or one bit of it flips: it is named, and everything else still goes."""

from typing import Any

import pytest

from tests.browser.office import Office
from tests.browser.phone import Phone, declare, entry, keep_picture, picture
from tests.seed import chance

CHUNK = 256 * 1024
DROP = "await withDb([arg[0]], 'readwrite', (tx) => tx.store.delete(arg[1]))"
FLIP = """await withDb(['photo_chunks'], 'readwrite', async (tx) => {
  const row = await tx.store.get([arg.name, arg.chunk]);
  new Uint8Array(row.bytes)[arg.byte] ^= 1 << arg.bit; await tx.store.put(row) })"""
ALTER = """await withDb(['entries'], 'readwrite', async (tx) => {
  const row = await tx.store.get(arg.key), token = row.token.split('');
  token[arg.at] = token[arg.at] === 'A' ? 'B' : 'A'; await tx.store.put({ ...row, token: token.join('') }) })"""
FOUND = "return photoBytes(arg).then(({ bytes }) => bytes.length, (fault) => fault.code)"


def areas(office: Office) -> set[str]:
    return {one.payload["body"]["name"] for one in office.entries() if one.payload["kind"] == "area"}


def test_whatever_row_is_lost_or_altered_is_named_and_all_else_still_goes(phone: Phone, office: Office) -> None:
    ann = phone.sign_in("ann")["id"]
    kept = {f"n{n}": phone.note(office.job, f"n{n}")["digest"] for n in range(20)}
    photos = [keep_picture(phone, office.job, n, CHUNK + 50)["sha256"] for n in range(2)]
    phone.run(DROP, ["entries", [ann, kept.pop("n3")]])
    phone.run(ALTER, {"key": [ann, kept.pop("n5")], "at": 300})
    phone.run(FLIP, {"name": photos[0], "chunk": 0, "byte": 77, "bit": 3})

    phone.run("await withDb(['keys'], 'readwrite', (tx) => tx.store.clear())")
    code = phone.run("return keepEntry(arg).catch((fault) => fault.code)", entry(office.job, "x"))
    assert code == "people.no_key"
    assert phone.run("return sendNow()")["reason"] == "people.no_key"
    phone.run("await enrol()")

    phone.run(DROP, ["meta", ["server"]])
    told = phone.run("return sendNow()")
    assert (told["reason"], told["entries"]) == ("people.no_key", 22), "no receipt can be believed, and that is said"
    phone.run("await enrol()")

    phone.run(DROP, ["people", ann])
    phone.sign_in("ann")
    phone.run("await sendNow()")
    assert areas(office) == set(kept), "18 of 20, and each verified by the office under the key that signed it"
    assert office.photo(photos[1]) and not office.photo(photos[0])
    left = {row["name"]: (row["state"], row["refusal"]["code"]) for row in phone.run("return outboxItems()")}
    assert sorted(left.values()) == [("damaged", "entry_damaged")] * 2 + [("damaged", "photo_damaged")]
    phone.note(office.job, "after")
    phone.run("await sendNow()")
    assert "after" in areas(office), "what is damaged is in nobody's way"


def test_a_photo_goes_with_the_entry_of_whoever_has_come_to_hold_the_phone_meanwhile(
    phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    kept = phone.run(f"return keepPhoto({picture(3, CHUNK)})")
    phone.sign_in("ben")
    declare(phone, office.job, kept)
    phone.run("await sendNow()")
    assert len(office.photo(kept["sha256"])) == CHUNK


@pytest.mark.soak
def test_any_flipped_bit_of_any_stored_photo_is_found_and_no_other_photo_is_accused(
    phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    dice = chance("flips")
    sizes = [1, CHUNK - 1, CHUNK, CHUNK + 1, 3 * CHUNK + 17]
    made: dict[str, int] = {}
    for n in range(50):
        photo = phone.run(f"return keepPhoto({picture(n, sizes[n % 5])})")
        made[photo["sha256"]] = photo["size"]
    missed, accused, flips = 0, 0, 1000
    names = list(made)
    for _ in range(flips):
        name, other = dice.sample(names, 2)
        byte = dice.randrange(made[name])
        where = {"name": name, "chunk": byte // CHUNK, "byte": byte % CHUNK, "bit": dice.randrange(8)}
        phone.run(FLIP, where)
        missed += phone.run(FOUND, name) != "outbox.photo_damaged"
        accused += phone.run(FOUND, other) != made[other]
        phone.run(FLIP, where)
    print(f"{flips} flipped bits in {len(made)} photos: {missed} not found, {accused} whole photos called damaged")
    assert (missed, accused) == (0, 0)


@pytest.mark.soak
def test_thousands_of_photos_of_awkward_sizes_survive_reloads_and_kills(profile: Any, office: Office) -> None:
    phone = Phone(profile.start(), office.url)
    phone.sign_in("ann")
    sizes = [1, 2, CHUNK - 1, CHUNK, CHUNK + 1, 3 * CHUNK + 17]
    kept: dict[str, int] = {}
    for part in range(20):
        made = phone.run(
            f"""const kept = [];
              for (let n = arg.from; n < arg.from + 100; n += 1) {{
                const size = n % 100 === 99 ? 25e6 : arg.sizes[n % arg.sizes.length];
                kept.push(await keepPhoto({picture("n", "size")})) }}
              return kept""",
            {"from": 100 * part, "sizes": sizes},
        )
        kept |= {photo["sha256"]: photo["size"] for photo in made}
        if part % 2:
            phone.again()
        else:
            profile.kill()
            phone = Phone(profile.start(), office.url)
    back = {name: phone.run(FOUND, name) for name in kept}
    wrong = {name for name in kept if back[name] != kept[name]}
    print(f"2000 photos kept ({len(kept)} different), 10 kills, 10 reloads: {len(wrong)} do not come back to the byte")
    assert not wrong and len(kept) > 1000
