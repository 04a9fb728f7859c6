"""A storage that dies under the app, a full disk: what was saved stands, and nothing says saved too early."""

from tests.browser.phone import Phone, entry, keep_picture, picture

# Fails the k-th transaction from now on, once, in the way named; counts them all.
SHIM = """
  window.fault = { count: 0, at: Infinity, how: '' };
  const real = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...args) {
    window.fault.count += 1;
    const hit = window.fault.count === window.fault.at, how = window.fault.how;
    if (hit && how.endsWith('Error')) throw new DOMException('the storage is gone', how);
    if (hit && how === 'closed') this.close();
    const tx = real.apply(this, args);
    if (hit && how === 'unheard') tx.addEventListener('complete', (event) => { // done, and nobody hears of it
      event.stopImmediatePropagation(); tx.dispatchEvent(new Event('abort')) });
    if (hit && how === 'aborts') queueMicrotask(() => { try { tx.abort() } catch { /* ended */ } });
    return tx;
  };"""
SCRIPT = """
  const script = async (n) => {
    await saveDraft('p', 'k', n);
    const photo = await keepPhoto(make(n));
    const kept = await keepEntry(arg);
    return [photo.sha256, kept.digest];
  };"""


def test_every_storage_call_may_fail_once_and_nothing_is_lost_or_doubled(phone: Phone, office) -> None:
    phone.sign_in("ann")
    body = f"""{SHIM} const make = (n) => {picture("n", "3000 + n")}; {SCRIPT}
      await script(0); window.fault.count = 0; await script(1);
      const calls = window.fault.count; const saved = []; let n = 2;
      for (const how of ['InvalidStateError', 'UnknownError', 'closed', 'aborts', 'unheard']) {{
        for (let k = 1; k <= calls; k += 1) {{
          window.fault = {{ count: 0, at: k, how }};
          saved.push(...await script(n += 1));
          if (window.fault.count > calls + 8) throw new Error(`too many after ${{how}} at ${{k}}`);
        }}
      }}
      return {{ calls, saved }}"""
    told = phone.run(body, entry(office.job, "faults"))
    assert told["calls"] > 10
    entries = {row["digest"] for row in phone.rows("entries")}
    photos = {row["sha256"] for row in phone.rows("photos")}
    assert set(told["saved"]) <= entries | photos
    runs = 5 * told["calls"] + 2
    assert len(entries) == len(photos) == runs, "each exactly once"
    chain = sorted(row["seq"] for row in phone.rows("outbox") if row["what"] == "entry")
    assert chain == list(range(runs))


def test_a_storage_that_stays_away_is_said_and_the_app_recovers(phone: Phone, office) -> None:
    phone.sign_in("ann")
    code = phone.run("""const real = indexedDB.open; IDBDatabase.prototype.transaction = function () {
        throw new DOMException('gone', 'InvalidStateError') };
      return keepEntry(arg).catch((fault) => fault.code)""", entry(office.job, "x"))  # fmt: skip
    assert code == "outbox.storage_stopped"
    phone.again()
    phone.note(office.job, "x")
    assert phone.run("return counts()")["entries"] == 1


def test_every_write_of_work_is_strict(phone: Phone, office) -> None:
    phone.sign_in("ann")
    used = phone.run(f"""const seen = []; const real = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (...args) {{ const tx = real.apply(this, args);
        if (tx.mode === 'readwrite') seen.push(tx.durability); return tx }};
      await keepPhoto({picture(1, 5000)}); await keepEntry(arg); return [...new Set(seen)]""",
      entry(office.job, "x"))  # fmt: skip
    assert used == ["strict"]


def test_a_full_disk_refuses_photos_in_words_keeps_text_and_recovers(phone: Phone, office) -> None:
    devtools = phone.context.new_cdp_session(phone.page)
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": office.url, "quotaSize": 2_500_000})
    phone.sign_in("ann")
    saved = [keep_picture(phone, office.job, n, 400_000)["sha256"] for n in range(2)]
    codes = []
    for n in range(10, 14):
        codes.append(phone.run(f"return keepPhoto({picture(n, 900_000)}).then(() => 'kept', (f) => f.code)"))
    assert codes[-1] == "outbox.disk_full", (codes, phone.page.evaluate("navigator.storage.estimate()"))
    for sha256 in saved:
        assert phone.run("return photoBytes(arg).then(({ bytes }) => bytes.length)", sha256) == 400_000
    assert phone.run("return keepEntry(arg).then(() => 'kept', (f) => f.code)", entry(office.job, "t")) in (
        "kept", "outbox.disk_full",
    )  # fmt: skip
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": office.url})
    assert phone.run(f"return keepPhoto({picture(20, 900_000)}).then(() => 'kept', (f) => f.code)") == "kept"
    phone.run("await sendNow()")
    assert all(office.photo(sha256) for sha256 in saved)
