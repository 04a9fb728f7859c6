"""Every cell of the standard's tables, with the arrows followed by a reader of its own."""

import csv
from pathlib import Path

import pytest

from inspect_app.rules.plan import letter_of, plan
from inspect_app.rules.sampling_table import AQLS, LETTERS, LEVELS, MASTERS

TABLES = Path(__file__).parents[1] / "vectors" / "sampling"
MASTER = {"normal": "table_II_A_normal_master", "tightened": "table_II_B_tightened_master",
          "reduced": "table_II_C_reduced_master"}  # fmt: skip
STEP = {"down": 1, "up": -1}


def rows(name):
    with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def resolved(inspection):
    """``{(letter, AQL): (letter, sample, accept, reject)}`` by walking the printed column."""
    column = rows(MASTER[inspection])
    found = {}
    for start, row in enumerate(column):
        for aql in list(row)[2:]:
            at = start
            while column[at][aql] in STEP:
                at += STEP[column[at][aql]]
            accept, reject = column[at][aql].split("/")
            found[row["code_letter"], aql] = (
                column[at]["code_letter"], int(column[at]["sample_size"]), int(accept), int(reject))  # fmt: skip
    return found


def lot_of(letter):
    """A lot and a level for which Table I gives that letter; the largest lot, so that no sample is cut to it."""
    return max((int(row["lot_max"] or 1_000_000), level)
               for row in rows("table_I_code_letters") for level in LEVELS if row[level] == letter)  # fmt: skip


def test_every_cell_of_table_one_is_answered_at_both_ends_of_its_row():
    cells = 0
    for row in rows("table_I_code_letters"):
        for level in LEVELS:
            cells += 1
            for lot in (int(row["lot_min"]), int(row["lot_max"] or 1_000_000)):
                assert letter_of(lot, level) == row[level], (lot, level)
    assert cells == 105 == len(LETTERS) * len(LEVELS)


@pytest.mark.parametrize("inspection", MASTER)
def test_every_plan_of_the_master_table_is_the_one_its_arrows_lead_to(inspection):
    printed = {key: found for key, found in resolved(inspection).items() if key[0] != "S"}
    assert len(printed) == 416 and {aql for _, aql in printed} == set(AQLS)
    for (letter, aql), (last, sample, accept, reject) in printed.items():
        lot, level = lot_of(letter)
        expected = {"letter": last, "letter_first": letter, "n": min(sample, lot), "accept": accept, "reject": reject}
        assert plan(lot, level, aql, inspection) == expected, (letter, aql)


@pytest.mark.parametrize("inspection", MASTER)
def test_the_copy_in_the_code_is_the_printed_table_arrow_by_arrow(inspection):
    signs = {"v": "down", "^": "up"}
    for printed, (letter, sample, cells) in zip(rows(MASTER[inspection]), MASTERS[inspection], strict=True):
        assert (printed["code_letter"], int(printed["sample_size"])) == (letter, sample)
        for aql, cell in zip(AQLS, cells.split(" "), strict=True):
            told = signs.get(cell) or (cell if "/" in cell else f"{cell}/{int(cell) + 1}")
            assert printed[aql] == told, (inspection, letter, aql)


def test_an_arrow_never_leads_out_of_the_table_nor_back():
    for inspection in MASTERS:
        for letter, _, cells in MASTERS[inspection]:
            assert len(cells.split(" ")) == len(AQLS), letter
    assert plan(1_000_000, "III", "0.015", "normal")["letter"] == "P"
    assert plan(1_000_000, "III", "0.025", "tightened")["letter"] == "S"


@pytest.mark.parametrize("lot", [1, 2, 3, 19, 20, 21])
def test_a_sample_as_large_as_the_lot_is_the_lot(lot):
    found = plan(lot, "II", "0.65", "normal")  # the sample of every small lot is 20
    assert found["n"] == min(lot, 20) and (found["accept"], found["reject"]) == (0, 1)
