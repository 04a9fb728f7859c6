"""The page's own check and `seamwalk verify` come to the same facts, on sound packages and on attacked ones."""

import io
import json
import random
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from inspect_app.commands.opened import open_archive
from inspect_app.evidence.fact import FAILS
from inspect_app.settings import shipped
from tests.evidence.attacks.found import GROUPS, check
from tests.evidence.packed import sound
from tests.office import Office
from tests.package.packages import packed
from tests.package.packages import zipped as streamed
from tests.upkeep.filled import Filled
from tests.verify_page.attacks import ATTACKS
from tests.verify_page.bag import Files, Small, listed, zipped
from tests.verify_page.both import SHARED, Facts, by_the_page, by_the_program

pytestmark = pytest.mark.xdist_group("attacks")  # one process holds what was found of each
SIGNED = ("data/entries.txt", "data/receipts.txt", "data/enrolments.txt", "data/server-key.json")
WORDS = json.loads((shipped("static") / "words" / "verify_page.json").read_text("utf-8"))
# What the program is attacked by, with reports, on a package of its own.
PROGRAMS: dict[str, Callable[[], Files]] = {
    one.what: lambda one=one: one.files(dict(sound())) for attacks in GROUPS.values() for one in attacks
}


def both_ways(folder: Path, packages: list[bytes]) -> list[tuple[Facts | None, Facts]]:
    """What page and program find of each, None where the page does not take it at all; whatever the page gives as a
    reason, it has words for."""
    zips = [folder / f"{at}.zip" for at in range(len(packages))]
    for path, data in zip(zips, packages, strict=True):
        path.write_bytes(data)
    found = by_the_page(folder, zips)
    said = {f"reason.{fact['reason']}" for one in found for fact in one.get("facts", []) if fact["reason"]}
    said |= {f"unreadable.{one['unreadable']}" for one in found if "unreadable" in one}
    assert {f"verify_page.{one}" for one in said} <= WORDS.keys()
    pages = [{fact["name"]: fact["status"] for fact in one["facts"]} if "facts" in one else None for one in found]
    return [(page, by_the_program(path)) for page, path in zip(pages, zips, strict=True)]


@pytest.fixture(scope="module")
def attacked(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Facts | None, Facts]]:
    packages = [zipped(attack(Small())) for attack in ATTACKS.values()]
    packages += [zipped(files()) for files in PROGRAMS.values()]
    return dict(zip([*ATTACKS, *PROGRAMS], both_ways(tmp_path_factory.mktemp("attacked"), packages), strict=True))


@pytest.mark.parametrize("attack", [*ATTACKS, *PROGRAMS])
def test_page_and_program_come_to_the_same_facts(attack: str, attacked: dict[str, tuple[Facts, Facts]]) -> None:
    page, program = attacked[attack]
    if attack == "a file with a path that leads out is listed":
        assert page is None and "fails" in program.values()
    else:
        assert tuple(page) == SHARED
        assert page == program


def test_every_attack_turns_a_fact_and_each_fact_is_turned(attacked: dict[str, tuple[Facts, Facts]]) -> None:
    turned = {name: {fact for fact, status in attacked[name][0].items() if status != "holds"} for name in ATTACKS}
    # No attacks: the same lines, what an administrator or a second signer may, what a system leaves behind.
    fine = {"nothing", "no line feed at the end", "a key ended, its entry let in", "a countersigned report",
            "what a system leaves behind"}  # fmt: skip
    assert {name for name, facts in turned.items() if not facts} == fine
    assert set().union(*turned.values()) == set(SHARED)


def flipped(files: Files, chance: random.Random) -> Files:
    """One bit of a signed file turned, and the bag's lists written anew over it."""
    name = chance.choice(SIGNED)
    data = bytearray(files[name])
    data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
    return listed(files | {name: bytes(data)})


@pytest.mark.parametrize("count", [24, pytest.param(1500, marks=pytest.mark.soak)])
def test_any_bit_of_what_is_signed_turns_the_same_facts_in_both(count: int, tmp_path: Path) -> None:
    files, chance = Small().files(), random.Random(20261127)
    packages = [flipped(files, chance) for _ in range(count)]
    found = both_ways(tmp_path, [zipped(one) for one in packages])
    assert [at for at, (page, program) in enumerate(found) if page != program] == []
    # Of the key's own JSON a blank may become another one, and the last line feed may go: then nothing was changed.
    quiet = [one for one, (page, _) in zip(packages, found, strict=True) if set((page or {}).values()) == {"holds"}]
    assert all(one[name].rstrip() == files[name].rstrip() for one in quiet for name in SIGNED[:3])


def test_the_long_form_of_a_zip_is_read_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As the standard library writes it, told that anything over a hundred bytes is large."""
    monkeypatch.setattr(zipfile, "ZIP64_LIMIT", 100)
    data = zipped(Small().files())
    assert data.count(b"PK\x06\x06") == 1
    ((page, program),) = both_ways(tmp_path, [data])
    assert page == program and set(program.values()) == {"holds"}


def test_a_zip_with_something_beside_the_package_is_taken_by_neither(tmp_path: Path) -> None:
    out = io.BytesIO(zipped(Small().files()))
    with zipfile.ZipFile(out, "a") as more:
        more.writestr("another-package/bagit.txt", b"x")
    path = tmp_path / "two.zip"
    path.write_bytes(out.getvalue())
    (page,) = by_the_page(tmp_path, [path])
    assert page["unreadable"] == "path"
    assert "archive_sound" in {fact.name for fact in check(open_archive(path), ()).facts if fact.status == FAILS}


def test_the_package_that_the_office_makes_is_read_the_same(tmp_path: Path) -> None:
    filled = Filled(Office(tmp_path / "data"))
    bag = packed(filled.office, filled.job).bag
    ((page, program),) = both_ways(tmp_path, [streamed(bag)])
    filled.close()
    assert page == program and page["entries_signed"] == "holds"
