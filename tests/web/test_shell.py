"""The app's files as they are served: types, digests, compression, and what they weigh."""

import gzip
import hashlib
from pathlib import Path

import pytest

from inspect_app.application import create_app
from inspect_app.settings import settings_from
from inspect_app.web.shell_files import ShellFiles

BUDGET = 960 * 1024  # bytes on the wire: 79 s at 100 kbit/s, once; MicroPython alone takes 221 of these KiB
PACK, MOST = 128 * 1024, 100  # as static/sw.js asks
GZIP = {"Accept-Encoding": "gzip"}


@pytest.fixture(scope="module")
def client(tmp_path_factory):
    return create_app(settings_from({"SEAMWALK_DATA": str(tmp_path_factory.mktemp("data"))})).test_client()


def test_the_list_names_each_file_by_the_bytes_that_are_served(client) -> None:
    listing = client.get("/shell.json").json
    for file in listing["files"]:
        served = client.get(file["url"])
        assert served.status_code == 200, file["url"]
        assert hashlib.sha256(served.data).hexdigest() == file["sha256"], file["url"]
        assert len(served.data) == file["size"]


def test_a_pack_is_the_files_asked_for_end_to_end(client) -> None:
    files = client.get("/shell.json").json["files"][5:12]
    asked = {"files": [one["sha256"] for one in files]}
    plain = client.post("/pack", json=asked)
    assert plain.data == b"".join(client.get(one["url"]).data for one in files)
    packed = client.post("/pack", json=asked, headers={"Accept-Encoding": "gzip"})
    assert gzip.decompress(packed.data) == plain.data and len(packed.data) < len(plain.data)


@pytest.mark.parametrize(
    ("asked", "status"),
    [({"files": ["0" * 64]}, 404), ({"files": []}, 400), ({"files": ["0"] * 101}, 400), ({"files": "0"}, 400),
     ({"files": [7]}, 400), ([], 400), (None, 400)],
)  # fmt: skip
def test_a_pack_of_nothing_of_ours_is_refused_in_words(client, asked, status: int) -> None:
    answer = client.post("/pack", json=asked)
    assert answer.status_code == status and answer.json["error"]["way_out"].startswith("Open the app again")


def test_the_rulebook_in_one_text_is_the_files_themselves(client) -> None:
    whole = client.get("/rulebook.json").json
    listed = [one["url"] for one in client.get("/shell.json").json["files"] if one["url"].startswith("/rulebook/")]
    assert sorted(f"/rulebook/{name}" for name in whole) == sorted(listed)
    assert all(client.get(url).text == whole[url.removeprefix("/rulebook/")] for url in listed[::9])


def test_compressed_and_plain_answers_are_the_same_file(client) -> None:
    for url in ("/", "/static/sync/engine.js", "/static/vendor/micropython.wasm"):
        plain = client.get(url)
        packed = client.get(url, headers={"Accept-Encoding": "gzip"})
        assert packed.headers["Content-Encoding"] == "gzip"
        assert gzip.decompress(packed.data) == plain.data
        assert packed.headers["ETag"] != plain.headers["ETag"]
        again = client.get(url, headers={"Accept-Encoding": "gzip", "If-None-Match": packed.headers["ETag"]})
        assert (again.status_code, again.data) == (304, b"")


@pytest.mark.parametrize(
    ("url", "kind"),
    [
        ("/", "text/html"), ("/sw.js", "text/javascript"), ("/static/main.js", "text/javascript"),
        ("/static/vendor/micropython.mjs", "text/javascript"),
        ("/static/vendor/micropython.wasm", "application/wasm"), ("/shell.json", "application/json"),
        ("/rulebook/record/fold.py", "text/plain"),
        ("/static/manifest.webmanifest", "application/manifest+json"),
    ],
)  # fmt: skip
def test_every_file_has_the_type_that_browsers_insist_on(client, url: str, kind: str) -> None:
    answer = client.get(url)
    assert answer.mimetype == kind
    assert "wasm-unsafe-eval" in answer.headers["Content-Security-Policy"]


def test_the_worker_and_the_list_are_never_taken_from_a_cache(client) -> None:
    build = client.get("/shell.json").json["build"]
    worker = client.get("/sw.js")
    assert worker.headers["Cache-Control"] == "no-cache"
    assert worker.text.splitlines()[0] == f'const BUILD = "{build}"'


@pytest.mark.parametrize(
    "url",
    ["/static/../pyproject.toml", "/static/%2e%2e/pyproject.toml", "/rulebook/store/log.py",
     "/rulebook/../web/shell.py", "/static/no_such.js"],
)  # fmt: skip
def test_nothing_outside_the_app_is_served(client, url: str) -> None:
    assert client.get(url).status_code == 404


def test_one_changed_byte_anywhere_makes_another_build(tmp_path: Path) -> None:
    for name in ("index.html", "main.js", "part/one.js"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text("first")
    files = ShellFiles(tmp_path, tmp_path)
    builds = {files.build()}
    for name in ("index.html", "main.js", "part/one.js"):
        (tmp_path / name).write_text("second")
        builds.add(files.build())
    (tmp_path / "part" / "two.js").write_text("")
    builds.add(files.build())
    assert len(builds) == 5


def test_a_pack_holds_a_file_as_it_is_now_wherever_it_lies_and_never_as_it_was(tmp_path: Path) -> None:
    named = {text: hashlib.sha256(text.encode()).hexdigest() for text in ("page", "first", "second")}
    (tmp_path / "index.html").write_text("page")
    (tmp_path / "one.js").write_text("first")
    files = ShellFiles(tmp_path, tmp_path)
    assert files.pack([named["first"], named["page"]]) == b"firstpage"
    (tmp_path / "one.js").write_text("second")
    assert files.pack([named["first"]]) is None and files.pack([named["second"]]) == b"second"
    (tmp_path / "one.js").rename(tmp_path / "two.js")
    assert files.pack([named["page"], named["second"]]) == b"pagesecond"
    (tmp_path / "two.js").unlink()
    assert files.pack([named["second"]]) is None and files.pack([named["page"]]) == b"page"


def packs(listed: list[dict]) -> list[list[str]]:
    """The files of an install as the worker asks for them."""
    found: list[list[str]] = []
    room = 0
    for one in listed:
        if room < one["size"] or len(found[-1]) >= MOST:
            found.append([])
            room = PACK
        found[-1].append(one["sha256"])
        room -= one["size"]
    return found


def test_the_whole_app_stays_light(client, capsys) -> None:
    asked = packs(client.get("/shell.json").json["files"])
    came = [client.get("/sw.js", headers=GZIP), client.get("/shell.json", headers=GZIP)]
    came += [client.post("/pack", json={"files": pack}, headers=GZIP) for pack in asked]
    weight = sum(len(one.data) for one in came)
    with capsys.disabled():
        told = f"{weight // 1024} of {BUDGET // 1024} KiB, {sum(map(len, asked))} files in {len(came)} requests"
        print(f"\n  shell: {told}")
    assert weight <= BUDGET and len(came) <= 40

