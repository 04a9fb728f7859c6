"""Pictures of others, taken along for a roof without signal: they are there then, and go first when room runs short."""

from typing import Any

from tests.browser.office import Office
from tests.browser.phone import Phone, keep_picture, picture

ALONG = "const { elsewhere, takeAlong } = await import('/static/photo/along.js');"
HERE = "const { elsewhere } = await import('/static/photo/along.js'); return elsewhere(arg)"
DROP = "const { dropOldest } = await import('/static/storage/room.js'); return dropOldest()"


def test_pictures_taken_along_need_no_signal_and_go_before_anything_of_one_s_own(
    chromium: Any, phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    hers = [keep_picture(phone, office.job, n, 3000 + n)["sha256"] for n in range(2)]
    phone.run("await sendNow()")
    other = Phone(chromium.new_context(), office.url)
    other.sign_in("ben")
    own = other.run(f"return (await keepPhoto({picture(9, 4000)})).sha256")
    asked = [*hers, hers[0], own]
    assert other.run(f"{ALONG} return elsewhere(arg)", asked) == hers
    loads = f"{ALONG} for (const name of arg.names) await takeAlong(name, arg.job); return elsewhere(arg.names)"
    assert other.run(loads, {"names": [*hers, own], "job": office.job}) == []
    office.stop()
    for n, sha256 in enumerate(hers):
        assert other.run("return photoBytes(arg).then(({ bytes }) => bytes.length)", sha256) == 3000 + n
    assert [other.run(DROP) for _ in range(3)] == [True, True, False], "theirs, and then nothing"
    assert other.run(HERE, asked) == hers
    assert other.run("return photoBytes(arg).then(({ bytes }) => bytes.length)", own) == 4000
    assert other.run("return counts()")["photos"] == 0, "what was fetched is not sent again"


OWN = "const { missingPictures, startOwnPictures } = await import('/static/shell/own_pictures.js');"
FULL = "const { writeMeta } = await import('/static/storage/meta.js'); await writeMeta(['full'], arg)"
BRING = "const { bringAlong } = await import('/static/photo/along.js'); return bringAlong(arg.sha256, arg.job)"


def test_pictures_of_one_s_own_findings_come_by_themselves_into_room_that_is_free(
    chromium: Any, phone: Phone, office: Office
) -> None:
    phone.sign_in("ann")
    hers = [keep_picture(phone, office.job, n, 3000 + n)["sha256"] for n in range(2)]
    for n, sha256 in enumerate(hers):
        body = {"walk": None, "area": None, "severity": "minor", "photos": [sha256], "name": "Ann", "role": "foreman",
                "required": "tight", "found": "loose"}  # fmt: skip
        phone.run("return keepEntry(arg)", {"job": office.job, "kind": "finding", "body": body,
                                            "subject": f"01a00000-0000-7000-8000-00000000f00{n}"})  # fmt: skip
    phone.run("await sendNow()")
    other = Phone(chromium.new_context(), office.url)
    other.sign_in("ann")
    other.run("await sendNow()")
    assert other.run(f"{OWN} return missingPictures()") == 2, "what the strip says before they are here"
    other.run(FULL, True)
    assert other.run(BRING, {"sha256": hers[0], "job": office.job}) is False, "nothing makes room for it"
    assert other.run(HERE, hers) == hers
    other.run(FULL, False)
    other.run(f"{OWN} startOwnPictures(); await sendNow()")
    wait = "await new Promise((go) => setTimeout(go, 50))"
    other.run(f"{OWN} for (let n = 0; n < 200 && await missingPictures(); n += 1) {wait}")
    assert other.run(HERE, hers) == []
    office.stop()
    assert other.run("return photoBytes(arg).then(({ bytes }) => bytes.length)", hers[1]) == 3001
    assert [other.run(DROP) for _ in range(3)] == [True, True, False], "they go before anything of one's own"
