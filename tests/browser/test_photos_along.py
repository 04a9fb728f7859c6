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
