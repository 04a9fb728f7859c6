"""`verify.html` as a stranger opens it: a file on their own machine, no server, no network, whatever was given."""

import io
import zipfile
from pathlib import Path
from typing import Any

import pytest

from inspect_app.package.page import page as assembled
from inspect_app.settings import shipped
from tests.browser.eye import Eye
from tests.verify_page.attacks import ATTACKS
from tests.verify_page.bag import FOLDER, Small, drawn, listed, zipped
from tests.verify_page.both import SHARED, by_the_program

NAME = "seamwalk-package-5ma11.zip"
HOSTILE = '<img src=x onerror=alert(1)>\u202e'


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("page") / "verify.html"
    file.write_bytes(assembled(shipped("static")))
    return file


@pytest.fixture
def page(chromium: Any, page_file: Path):
    """The page on a phone that speaks English; whatever it asks for beside itself fails the test."""
    context = chromium.new_context(viewport={"width": 360, "height": 740}, locale="en-US")
    shown, asked, wrong = context.new_page(), [], []
    shown.on("request", lambda one: asked.append(one.url))
    shown.on("pageerror", lambda one: wrong.append(str(one)))
    shown.on("dialog", lambda one: (wrong.append(one.message), one.dismiss()))
    shown.goto(page_file.as_uri())
    yield shown
    assert wrong == []
    assert [url for url in asked if not url.startswith(("file:", "data:", "blob:"))] == []
    context.close()


def give(page: Any, what: Path) -> None:
    page.set_input_files("input[webkitdirectory]" if what.is_dir() else "input[accept]", what)
    page.locator('[data-name="verdict"], [data-name="unreadable"]').wait_for()


def facts(page: Any) -> dict[str, tuple[str, str | None]]:
    told = page.locator('[data-name="fact"]').evaluate_all(
        "(all) => all.map(({ dataset: { fact, status, reason } }) => [fact, status, reason ?? null])"
    )
    return {name: (status, reason) for name, status, reason in told}


def speak(page: Any, code: str) -> None:
    page.click(f'[data-name="language-{code}"]')


def readable(page: Any) -> None:
    """At 320 px, usual and doubled text, in both languages."""
    eye, usual = Eye(page), page.viewport_size
    page.set_viewport_size({"width": 320, "height": 568})
    wrong = eye.places()
    eye.size(32)
    for again, code in enumerate(("es", "en")):
        speak(page, code)
        page.locator("details:not([open]) > summary").evaluate_all("(all) => all.forEach((one) => one.click())")
        wrong += [f"{code}: {fault}" for fault in eye.faults(bool(again))]
    assert not wrong, "\n".join(wrong)
    eye.size(16)
    page.set_viewport_size(usual)


def test_a_sound_package_is_checked_explained_and_shown(page: Any, tmp_path: Path) -> None:
    small = Small()
    (tmp_path / NAME).write_bytes(zipped(small.files()))
    readable(page)
    give(page, tmp_path / NAME)
    found = facts(page)
    assert {name: found[name][0] for name in SHARED} == by_the_program(tmp_path / NAME)
    assert set(found.values()) == {("holds", None), ("not_determinable", "no_fingerprint_given")}
    readable(page)
    pictures = page.locator('[data-name="photo"] img')
    pictures.first.scroll_into_view_if_needed()
    widths = "Promise.all([...document.images].map(async (one) => (await one.decode(), one.naturalWidth)))"
    assert page.evaluate(widths) == [64, 64]
    assert pictures.count() == 2
    shown = [[int(one) for one in lot.split()] for lot in page.locator(".drawn").all_inner_texts()]
    lots = small.site.record()["lots"].values()
    known = [[stop.get("panel") for stop in lot["drawn"]] for lot in lots]
    assert len(shown) == 2 and all(shown)
    # The record keeps sealed what is not due; what it tells is what came out here.
    assert all(told in (None, panel) for lot, own in zip(known, shown, strict=True)
               for told, panel in zip(lot, own, strict=True))  # fmt: skip

    for typed, state in (("ab" * 32, "fails"), ("12", "fails"), (small.fingerprint.upper(), "holds")):
        page.fill('[data-name="fingerprint-typed"]', typed)
        page.click('[data-name="compare"]')
        assert facts(page)["server_known"][0] == state
    assert page.get_attribute('[data-name="verdict"]', "data-state") == "holds"


def test_an_attacked_folder_is_told_of_and_what_was_exchanged_is_not_shown(page: Any, tmp_path: Path) -> None:
    made = drawn()
    made.say(made.chief, "job", made.job, {"name": HOSTILE})
    small = Small(made)
    files = ATTACKS["two photos exchanged"](small)
    for name, data in listed(files).items():
        (tmp_path / FOLDER / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / FOLDER / name).write_bytes(data)
    give(page, tmp_path / FOLDER)
    found = facts(page)
    assert found["photos_match"] == ("fails", "other_bytes") and found["entries_signed"] == ("holds", None)
    assert page.get_attribute('[data-name="verdict"]', "data-state") == "fails"
    page.locator('[data-name="place"] > summary').click()
    page.locator("figure").nth(1).wait_for()
    assert page.locator("figure .note").count() == 2 and page.locator('[data-name="photo"]').count() == 0
    assert HOSTILE in page.locator(".facts").inner_text()
    readable(page)


def test_what_is_no_package_says_so_with_a_way_out(page: Any, tmp_path: Path) -> None:
    packed, twice = io.BytesIO(), io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(f"{FOLDER}/bagit.txt", b"x" * 100)
    with zipfile.ZipFile(twice, "w") as archive, pytest.warns(UserWarning, match="Duplicate"):
        for _ in range(2):
            archive.writestr(f"{FOLDER}/bagit.txt", b"x")
    sound = zipped(Small().files())
    given = {
        "not_a_zip": b"%PDF-1.7", "zip_packed": packed.getvalue(), "zip_twice": twice.getvalue(),
        "zip_damaged": sound[:3000] + sound[3001:], "no_package": zipped({"note.txt": b"x"}),
        "path": zipped({"../bagit.txt": b"x"}),
    }  # fmt: skip
    for code, data in given.items():
        (tmp_path / NAME).write_bytes(data)
        page.locator('[data-name="choose-zip"]').wait_for()
        give(page, tmp_path / NAME)
        assert page.get_attribute('[data-name="unreadable"]', "data-code") == code
    readable(page)


def test_the_page_can_reach_no_network_and_run_nothing_that_is_put_into_it(page: Any) -> None:
    tried = """async () => {
      const seen = []
      addEventListener('securitypolicyviolation', (one) => seen.push(one.effectiveDirective))
      const script = document.createElement('script')
      script.textContent = 'window.ran = true'
      document.body.append(script)
      const fetched = await fetch('http://127.0.0.1:9/').then(() => 'sent', (error) => error.name)
      await new Promise((done) => setTimeout(done, 50))
      return [window.ran ?? false, fetched, seen.sort()]
    }"""
    assert page.evaluate(tried) == [False, "TypeError", ["connect-src", "script-src-elem"]]
