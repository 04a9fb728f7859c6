"""Delivery: exactly once, whatever the network and the server answer; no answer ever deletes."""

import random

from tests.browser.gate import LIES, liar
from tests.browser.phone import Phone, entry, keep_picture


def areas(office) -> list[dict]:
    return [one.payload for one in office.entries() if one.payload["kind"] == "area"]


def delivers(request) -> bool:
    return request.path.startswith(("/api/entries", "/api/photos"))


def test_everything_arrives_and_a_receipt_is_kept_for_each(phone: Phone, office) -> None:
    phone.sign_in("ann")
    for n in range(3):
        phone.note(office.job, f"n{n}")
    photo = keep_picture(phone, office.job, 1, 300_000)
    state = phone.run("return sendNow()")
    assert (state["phase"], state["online"], state["entries"], state["photos"]) == ("idle", True, 0, 0), state
    assert [one["body"]["name"] for one in areas(office)] == ["n0", "n1", "n2"]
    assert len(office.photo(photo["sha256"]) or b"") == 300_000
    assert len(phone.rows("receipts")) == 5, "three areas, the photo's declaration, the photo; and none twice"
    posted = [line for line in office.gate.seen if line == "POST /api/entries"]
    assert len(posted) == 1, "one batch"


def test_the_manifest_goes_before_everything_else(phone: Phone, office) -> None:
    phone.sign_in("ann")
    phone.note(office.job, "first")
    keep_picture(phone, office.job, 1, 100)
    phone.run("await sendNow()")
    calls = [line for line in office.gate.seen if "/static/" not in line]
    order = [calls.index(line) for line in ("POST /api/manifest", "POST /api/entries", "POST /api/photos")]
    assert order == sorted(order)


def test_a_long_manifest_goes_in_parts_and_nothing_of_it_twice_after_a_new_start_either(phone: Phone, office) -> None:
    ann = phone.sign_in("ann")
    many = [entry(office.job, f"n{n}") for n in range(60)]
    phone.run("for (const one of arg) await keepEntry(one)", many)
    office.gate.lie = lambda request: "reset" if request.path == "/api/entries" else None
    told = []
    for again in ("", "", "one more", "and after a new start"):
        if again:
            phone.note(office.job, again)
        if again.startswith("and"):
            phone.again()
        before = office.gate.seen.count("POST /api/manifest")
        assert phone.run("return sendNow()")["entries"] >= 60
        told.append(office.gate.seen.count("POST /api/manifest") - before)
    assert told == [2, 0, 1, 1]
    with office.app.app_context():
        kid = office.parts.devices.of(ann["id"])[0].kid
        items = office.parts.manifests.of([kid])[0].items
    assert sorted(one["name"] for one in items) == sorted(row["name"] for row in phone.rows("outbox"))


def test_random_answers_and_cuts_delete_nothing_and_all_arrives_once(phone: Phone, office) -> None:
    phone.sign_in("ann")
    kept = {phone.note(office.job, f"n{n}")["digest"] for n in range(30)}
    photos = {keep_picture(phone, office.job, n, 150_000 + n)["sha256"] for n in range(3)}
    stored = len(phone.rows("entries")) + len(phone.rows("photos"))
    for seed in range(14):
        office.gate.lie = liar(seed, 0.5)
        state = phone.run("return sendNow()")
        held = {one.digest for one in office.entries()}
        waiting = {row["name"] for row in phone.rows("outbox")}
        assert kept <= held | waiting, "an item is on the phone until the office has it"
        assert len(phone.rows("entries")) + len(phone.rows("photos")) >= stored
        if state["entries"] + state["photos"] == 0:
            break
    told = set(office.gate.lies)
    office.gate.lie = lambda request: None
    state = phone.run("return sendNow()")
    assert state["entries"] + state["photos"] == 0, state
    digests = [one.digest for one in office.entries()]
    assert len(digests) == len(set(digests)) and kept <= set(digests)
    assert all(office.photo(sha256) for sha256 in photos)
    assert len(told) >= 8, f"the dice told too few lies to mean anything: {told}"


def test_no_single_kind_of_answer_takes_an_item_away(phone: Phone, office) -> None:
    phone.sign_in("ann")
    phone.run("await sendNow()")  # the token is held: each lie meets the items themselves
    digest = phone.note(office.job, "one")["digest"]
    sha256 = keep_picture(phone, office.job, 1, 40_000)["sha256"]
    for lie in LIES:
        office.gate.lie = lambda request, lie=lie: lie if delivers(request) else None
        phone.run("await sendNow()")
        names = {row["name"] for row in phone.rows("outbox")}
        assert {digest, sha256} <= names, lie
    office.gate.lie = lambda request: None
    state = phone.run("return sendNow()")
    assert state["entries"] + state["photos"] == 0
    assert office.photo(sha256) and digest in {one.digest for one in office.entries()}


def test_a_portal_that_answers_everything_with_a_page_is_not_online(phone: Phone, office) -> None:
    phone.sign_in("ann")
    for lie in ("200 HTML", "200 JSON", "301"):
        for lies in (delivers, lambda request: True):
            phone.run("await sendNow()")
            phone.note(office.job, "one")
            office.gate.lie = lambda request, lies=lies, lie=lie: lie if lies(request) else None
            state = phone.run("return sendNow()")
            assert (state["online"], state["reason"], state["entries"]) == (False, "sync.not_our_server", 1), lie
            office.gate.lie = lambda request: None


def test_a_refused_entry_is_shown_with_its_reason_and_blocks_nobody(phone: Phone, office) -> None:
    phone.sign_in("ann")
    stranger = "01a00000-0000-7000-8000-0000000000ff"
    refused = phone.note(stranger, "elsewhere")["digest"]
    phone.note(office.job, "good")
    phone.run("await sendNow()")
    left = phone.run("return outboxItems()")
    assert [(row["name"], row["state"]) for row in left] == [(refused, "refused")]
    assert left[0]["refusal"]["message"] and left[0]["refusal"]["wayOut"]
    assert [one["body"]["name"] for one in areas(office)] == ["good"]


def test_an_upload_goes_on_where_it_was_cut(phone: Phone, office) -> None:
    phone.sign_in("ann")
    size = 900_000
    sha256 = keep_picture(phone, office.job, 1, size)["sha256"]
    left = random.Random(1)
    cut = "answer lost"
    office.gate.lie = lambda request: cut if request.method == "PATCH" and left.random() < 0.3 else None
    for _ in range(20):
        if not phone.run("return sendNow()")["photos"]:
            break
    assert len(office.photo(sha256) or b"") == size
    created = [line for line in office.gate.seen if line == "POST /api/photos"]
    assert len(created) == 1, "the upload's address was kept"


def test_an_upload_that_the_server_gave_up_begins_anew_by_itself(phone: Phone, office) -> None:
    phone.sign_in("ann")
    sha256 = keep_picture(phone, office.job, 1, 200_000)["sha256"]
    pieces = iter([None, None, *["reset"] * 50])
    office.gate.lie = lambda request: next(pieces) if request.method == "PATCH" else None
    phone.run("await sendNow()")
    begun = list(office.app.extensions["photos"].uploads.folder.glob("*/*.*"))
    for file in begun:
        file.unlink()
    office.gate.lie = lambda request: None
    assert begun and phone.run("return sendNow()")["photos"] == 0
    assert len(office.photo(sha256) or b"") == 200_000


def test_after_an_answer_that_says_no_offset_it_is_asked_for_before_another_byte_goes(phone: Phone, office) -> None:
    phone.sign_in("ann")
    for n, lie in enumerate(("409", "500", "429")):
        keep_picture(phone, office.job, n, 200_000)
        answers = iter([None, lie])
        office.gate.lie = lambda request, left=answers: next(left, None) if request.method == "PATCH" else None
        before = len(office.gate.seen)
        assert phone.run("return sendNow()")["photos"] == 0, lie
        calls = [line.split()[0] for line in office.gate.seen[before:] if line.startswith(("PATCH", "HEAD"))]
        assert calls[:3] == ["PATCH", "PATCH", "HEAD"], calls


def test_several_people_deliver_each_under_their_own_name(phone: Phone, office) -> None:
    ann = phone.sign_in("ann")
    phone.run("await setPin('1234')")
    phone.note(office.job, "by ann")
    ben = phone.sign_in("ben")
    phone.note(office.job, "by ben")
    office.stop()
    wrong = phone.run("return unlock(arg, '9999').catch((fault) => fault.code)", ann["id"])
    phone.run("await unlock(arg, '1234')", ann["id"])
    phone.note(office.job, "ann again")
    own = phone.run("return counts()")["entries"]
    phone.run("await signOut()")
    hidden = phone.run("return counts()")["others"]
    office.start()
    phone.run("await sendNow()")
    assert wrong == "people.wrong_pin" and (own, hidden) == (2, 3), "signed out, hers is kept with his"
    by = {one["body"]["name"]: one["by"] for one in areas(office)}
    assert by == {"by ann": ann["id"], "ann again": ann["id"], "by ben": ben["id"]}
    assert [person["id"] for person in phone.run("return phonePeople()")] == [ben["id"]]


def test_an_ended_session_strands_nothing(phone: Phone, office) -> None:
    phone.sign_in("ann")
    phone.note(office.job, "one")
    phone.context.clear_cookies()
    assert phone.run("return sendNow()")["entries"] == 0


def test_a_revoked_key_keeps_its_work_and_says_so(phone: Phone, office) -> None:
    ann = phone.sign_in("ann")
    phone.note(office.job, "one")
    with office.app.app_context():
        kid = office.parts.devices.of(ann["id"])[0].kid
        office.parts.devices.revoke(kid, office.people["cato"])
    phone.run("await sendNow()")
    assert [row["state"] for row in phone.run("return outboxItems()")] == ["held"]
    phone.sign_in("ann")
    phone.note(office.job, "under a new key")
    phone.run("await sendNow()")
    assert [one["body"]["name"] for one in areas(office)] == ["under a new key"]
    assert [row["state"] for row in phone.run("return outboxItems()")] == ["held"]


def test_a_lost_key_loses_no_signed_work(phone: Phone, office) -> None:
    phone.sign_in("ann")
    for n in range(4):
        phone.note(office.job, f"n{n}")
    phone.run("await withDb(['keys'], 'readwrite', (tx) => tx.store.clear())")
    code = phone.run("return keepEntry(arg).catch((fault) => fault.code)", entry(office.job, "x"))
    assert code == "people.no_key"
    phone.run("await enrol()")
    phone.note(office.job, "new key")
    phone.run("await sendNow()")
    assert len(areas(office)) == 5


def test_others_work_comes_by_cursor_and_own_lost_receipts_with_it(phone: Phone, chromium, office) -> None:
    phone.sign_in("ann")
    phone.note(office.job, "by ann")
    # Only what carries entries: without its token the phone would have sent none.
    office.gate.lie = lambda request: "answer lost" if request.path == "/api/entries" else None
    phone.run("await sendNow()")
    office.gate.lie = lambda request: None
    context = chromium.new_context()
    other = Phone(context, office.url)
    other.sign_in("ben")
    other.run("await sendNow()")
    assert len(other.rows("entries")) == 2, "the job and Ann's area"
    phone.run("await sendNow()")
    assert phone.run("return counts()")["entries"] == 0
    assert [job["name"] for job in other.run("return jobs()")] == ["Boathouse (invented)"]
    phone.note(office.job, "the very next")
    phone.run("await sendNow()")
    other.run("await sendNow()")
    assert len(other.rows("entries")) == 3, "the cursor passes nothing by"
    context.close()


def test_delivery_works_where_the_browser_has_no_locks(phone: Phone, office) -> None:
    phone.sign_in("ann")
    phone.page.evaluate("() => Object.defineProperty(navigator, 'locks', { value: undefined })")
    phone.note(office.job, "one")
    assert phone.run("return sendNow()")["entries"] == 0


def test_what_waits_goes_by_itself_when_the_server_is_back(phone: Phone, office) -> None:
    phone.sign_in("ann")
    office.stop()
    phone.run("startSync()")
    phone.note(office.job, "one")
    phone.page.wait_for_timeout(700)
    assert phone.run("return status()")["online"] is False
    office.start()
    for _ in range(300):
        phone.page.wait_for_timeout(100)
        if areas(office):
            break
    assert [one["body"]["name"] for one in areas(office)] == ["one"]
