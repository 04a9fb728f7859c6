"""Every attack on a package turns a fact, or is one that nothing inside can show; the documentation prints which."""

from pathlib import Path

import pytest

from tests.evidence.attacks import on_the_archive
from tests.evidence.attacks.attack import Attack
from tests.evidence.attacks.found import GROUPS, table, turned, turned_archive, untouched

pytestmark = pytest.mark.xdist_group("attacks")  # one process remembers what each left, for the table
ROOT = Path(__file__).parents[2]
ALL = [one for attacks in GROUPS.values() for one in attacks]


def test_of_the_untouched_package_nothing_is_false_and_it_says_what_nobody_can_know():
    found = untouched()
    assert found.false == {}
    open_ones = {"log_not_cut", "reports_hold", "reports_hold: time_stamped"}
    assert found.untold.keys() == open_ones


@pytest.mark.parametrize("attack", ALL, ids=lambda one: one.what.replace(" ", "_"))
def test_an_attack_is_found_or_cannot_be_seen_from_inside(attack: Attack):
    found = turned(attack)
    assert bool(found.false) != bool(attack.unseen), found


@pytest.mark.parametrize("attack", on_the_archive.ATTACKS, ids=lambda one: one.what.replace(" ", "_"))
def test_an_attack_on_the_zip_is_found(attack: on_the_archive.OnTheArchive):
    assert {"archive_sound", "package_readable"} & turned_archive(attack.change).false.keys()


def test_the_zip_that_nobody_touched_is_sound():
    assert turned_archive(lambda data: data) == untouched()


def test_the_documentation_prints_their_table():
    assert table() in (ROOT / "DEVELOPERS.md").read_text("utf-8"), "print it with: python -m tests.evidence"
