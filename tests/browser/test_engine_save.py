"""Saved means saved: entries and photos on the phone, read back, without a network."""

from tests.browser.phone import Phone, entry, keep_picture, picture

CHUNK = 256 * 1024


def test_entries_are_kept_offline_and_found_after_a_reload(phone: Phone, office) -> None:
    phone.sign_in("ann")
    office.stop()
    kept = [phone.note(office.job, f"n{n}")["digest"] for n in range(5)]
    office.start()
    phone.again()
    counts = phone.run("return counts()")
    assert (counts["entries"], counts["photos"]) == (5, 0)
    assert {row["digest"] for row in phone.rows("entries")} == set(kept)


def test_two_tabs_saving_at_once_make_one_chain_without_gap_or_fork(phone: Phone, office) -> None:
    phone.sign_in("ann")
    other = Phone(phone.context, office.url)
    start = """window.done = Promise.all(Array.from({length: 50}, (_, n) => keepEntry(arg)))"""
    for tab in (phone, other):
        tab.run(f"{start}; return null", entry(office.job, "two"))
    for tab in (phone, other):
        tab.page.evaluate("async () => { await window.done }")
    phone.run("await sendNow()")
    phone.run("await sendNow()")
    chain = [one.payload for one in office.entries() if one.payload["kind"] == "area"]
    assert sorted(one["seq"] for one in chain) == list(range(100))
    assert len({one["prev"] for one in chain}) == 100


def test_photos_of_every_awkward_size_come_back_to_the_byte(phone: Phone, office) -> None:
    phone.sign_in("ann")
    sizes = [1, CHUNK - 1, CHUNK, CHUNK + 1, 3 * CHUNK + 17]
    for number, size in enumerate(sizes):
        photo = phone.run(f"return keepPhoto({picture(number, size)})")
        back = phone.run(f"""const file = new Uint8Array(await ({picture(number, size)}).arrayBuffer());
          const {{ bytes }} = await photoBytes(arg);
          return bytes.every((b, i) => b === file[i]) && bytes.length""",
          photo["sha256"])  # fmt: skip
        assert back == size == photo["size"]
    assert all(not isinstance(row.get("bytes"), str) for row in phone.rows("photos")), "bytes stand apart"


def test_what_no_entry_may_carry_is_refused_with_its_place(phone: Phone, office) -> None:
    phone.sign_in("ann")
    bad = entry(office.job, "bad")
    for value, code in ((0.5, "bad_number"), ("x" * 70_000, "too_large"), ("\0", "bad_text")):
        bad["body"]["name"] = value
        fault = phone.run("return keepEntry(arg).catch((fault) => [fault.code, fault.facts.code])", bad)
        assert fault == ["outbox.not_signable", code]
    assert phone.run("return counts()")["entries"] == 0


def test_what_is_no_photo_is_refused_with_its_name(phone: Phone, office) -> None:
    phone.sign_in("ann")
    refused = phone.run("""const tried = [new File([], 'empty.jpg', {type: 'image/jpeg'}),
        new File(['plain words'], 'notes.txt', {type: 'text/plain'})];
      const why = (fault) => [fault.code, fault.facts.value];
      return Promise.all(tried.map((file) => keepPhoto(file).catch(why)))""")
    assert refused == [["outbox.photo_empty", "empty.jpg"], ["outbox.photo_not_a_picture", "notes.txt"]]


def test_a_damaged_photo_is_named_and_the_others_still_go(phone: Phone, office) -> None:
    phone.sign_in("ann")
    bad, good = (keep_picture(phone, office.job, n, CHUNK + 99) for n in (1, 2))
    phone.run("""await withDb(['photo_chunks'], 'readwrite', async (tx) => {
      const row = await tx.store.get([arg, 1]);
      new Uint8Array(row.bytes)[40] ^= 1; await tx.store.put(row) })""", bad["sha256"])  # fmt: skip
    phone.run("await sendNow()")
    left = phone.run("return outboxItems()")
    named = [(row["name"], row["state"], row["refusal"]["chunk"]) for row in left]
    assert named == [(bad["sha256"], "damaged", 2)]
    assert office.photo(good["sha256"]) is not None and office.photo(bad["sha256"]) is None
    fault = phone.run("return photoBytes(arg).catch((fault) => fault.code)", bad["sha256"])
    assert fault == "outbox.photo_damaged"


def test_a_draft_holds_until_its_entry_is_kept(phone: Phone, office) -> None:
    person = phone.sign_in("ann")["id"]
    what = {**entry(office.job, "draft"), "draft": "area"}
    kept = phone.run("""await saveDraft(arg.person, 'area', { name: 'half' });
      const before = await loadDraft(arg.person, 'area'); await keepEntry(arg.what);
      return [before, await loadDraft(arg.person, 'area')]""", {"person": person, "what": what})  # fmt: skip
    assert kept == [{"name": "half"}, None]


def test_this_window_proves_that_it_can_keep_work(phone: Phone) -> None:
    assert phone.run("return capable()") == {"ok": True, "reason": None}
    phone.again()
    phone.page.evaluate("""() => { IDBObjectStore.prototype.put = function () {
      throw new DOMException('not here', 'DataCloneError') } }""")
    assert phone.run("return capable()") == {"ok": False, "reason": "shell.not_capable.storage"}
