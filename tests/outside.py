"""What the rules are held against that is not ours: ``python -m tests.outside`` prints it and writes it to
``tests/rules/OUTSIDE.md``. Counted from the vectors and from the tests themselves; a test fails when the page is stale.
"""

import json
import re
from pathlib import Path
from typing import Any

from tests.rules import sampling_cases, test_acceptance, test_properties, test_slot_cards, test_slot_photos

TESTS = Path(__file__).parent
PAGE = TESTS / "rules" / "OUTSIDE.md"
# How a publication is named in a vector's source → its name here. A value that was not seen in it says "from memory".
PUBLISHED = {
    r"AISC": "AISC, coefficient of structural steel",
    r"UFGS-07416A": "UFGS-07416A",
    r"UFC 3-110-03": "UFC 3-110-03 (2006)",
    r"two guides print": "UFC 3-110-03 and UFGS-07416A, whose metric figure is wrong",
    r"association article": "association article quoting a roofing manual",
    r"materials table": "materials table (aluminium 1100 and 6061, copper C11000)",
    r"EN 1993-1-1": "EN 1993-1-1 3.2.6",
    r"IBC|printed percents of the code": "IBC 1507.4.2",
    r"ASTM E1592": "ASTM E1592-05 5.2",
    r"insurer": "an insurer's uplift tests",
    r"CSSBI": "CSSBI Facts 10-12",
    r"15 U\.S\.C\. 206": "15 U.S.C. 206",
    r"galvanized gauge|gauge galvanized": "Galvanized Sheet Gauge",
    r"AISI S100(?! table)": "AISI S100",
    r"AISI S100 table": "AISI S100 as a city's public record prints it (33 ksi, Ω 3)",
    r"NDS": "NDS 12.2.2",
    r"ASCE 7": "ASCE 7 (edition as named)",
    r"ILAC|multiplier 1\.5": "ILAC-G8:09/2019 4.2",
    r"JCGM": "JCGM 106:2012",
    r"MIL-STD-105E": "MIL-STD-105E",
    r"7 CFR 42\.140": "7 CFR 42.140(c)",
    r"Kiermeier": "Kiermeier, J. Stat. Software 26(6), 2008",
    r"NIST handbook": "NIST/SEMATECH handbook of statistical methods",
    r"SciPy documentation": "SciPy documentation",
    r"normal table": "table of the normal distribution",
    r"central projection": "central projection (pinhole camera)",
    r"million strips": "numerical integration of the plane figure",
    r"Gregorian": "Gregorian calendar",
    r"Sim and Wright": "Sim and Wright, Physical Therapy 85(3), 2005",
    r"Cohen, same": "Cohen's kappa as an encyclopaedia prints it",
}
# Tests that hold something against an outside program, library or publication: what, against, file.
ELSEWHERE = [
    ("the report's numbers done again by hand from its printed pages", "pdftotext", "report/test_trace.py"),
    ("a draw done again", "Node, from the README alone", "node/test_node.py"),
    ("signatures", "RFC 7515 A.3, joserfc, jwcrypto, cryptography", "entry/test_jws.py"),
    ("signatures and thumbprints again", "Node's crypto, RFC 7515 A.3, RFC 7638", "node/entry_outside.test.js"),
    ("thumbprints", "RFC 7638", "entry/test_keys.py"),
    ("sealed reports", "pdfsig, qpdf", "evidence/test_verify.py"),
    ("time stamps", "openssl ts (RFC 3161)", "report/test_time_stamp.py"),
    ("countersigned reports", "pdfsig", "report/test_countersign.py"),
    ("the report's file", "pypdf, qpdf", "report/test_pages.py"),
    ("the API's document", "openapi-spec-validator", "web/test_open_api.py"),
    ("how long findings stay open, the open ones counted", "SciPy (Kaplan, Meier)", "record/test_trend_closing.py"),
    ("a lot's bad share and whether it stands out", "SciPy (Clopper, Pearson; Fisher)", "record/test_trend_shares.py"),
    ("the trends' table, read with three separators", "Papa Parse", "web/test_trends.py"),
    ("every screen", "axe-core (WCAG 2.2)", "browser/test_screens.py"),
    ("photos sent through a proxy that cuts, resets and stalls", "tuspy, tus-js-client", "tus/test_outside_clients.py"),
]


def of_the_rules() -> list[tuple[str, str, str, int]]:
    """``(what, against, file, cases)`` of the tests that hold the rules against programs and libraries."""
    known = len(vectors())
    return [
        ("every conversion between two units of a kind", "Pint (units after NIST SP 811)",
         "rules/test_properties.py", len(test_properties.PAIRS) * len(test_properties.NUMBERS)),
        ("three taps on a slot: the stated bound against the truth", "central projection", "rules/test_slot_photos.py",
         test_slot_photos.PHOTOGRAPHS * 6),
        ("a card beside the slot: the same", "central projection", "rules/test_slot_cards.py",
         test_slot_cards.PHOTOGRAPHS * 2),
        ("photographs drawn, blurred, compressed and read off their pixels", "central projection, Pillow",
         "rules/test_slot_cards.py", test_slot_cards.DRAWN),
        ("the risk of simple acceptance; a phone's median and spread", "statistics of Python's standard library",
         "rules/test_acceptance.py", test_acceptance.NORMAL * 2),
        ("chances, bounds and least samples of random lots, a lot of 60,000 among them", "SciPy",
         "rules/test_sampling_chances.py", sampling_cases.CASES * 7),
        ("lots with known bad ones accepted as often as computed", "20,000 lots drawn from, each three ways",
         "rules/test_sampling_chances.py", sampling_cases.LOTS * 3),
        ("Cohen's kappa and its error; the normal distribution's limits", "the delta method done numerically, SciPy",
         "rules/test_kappa.py", sampling_cases.TABLES + 6),
        ("the draw is even, place by place and order by order", "chi-square of 24,000 draws, SciPy",
         "rules/test_draw.py", 24_000),
        ("every cell of Table I and every plan after the arrows", "MIL-STD-105E, resolved by a reader of its own",
         "rules/test_sampling_tables.py", 105 + 1248),
        ("the same answers on the phone's interpreter", "MicroPython 1.27 against CPython",
         "micropython/test_parity.py", known),
        ("the same answers in the phone's own worker", "MicroPython in Chromium", "browser/test_rulebook.py", known),
    ]  # fmt: skip


def vectors() -> list[dict[str, Any]]:
    read: list[dict[str, Any]] = json.loads((TESTS / "vectors" / "rules.json").read_text("utf-8"))
    return read


def publications(source: str) -> list[str]:
    """The publications that a vector's source names, by their names here; ``(from memory)`` where it says so."""
    found = [name for words, name in PUBLISHED.items() if re.search(words, source)]
    return [f"{name} (from memory)" if "from memory" in source else name for name in found]


def by_publication() -> list[tuple[str, str, str, int]]:
    """``(rule, what is checked, publication, cases)``, sorted."""
    rows: dict[tuple[str, str], list[dict[str, Any]]] = {}
    for vector in vectors():
        for name in publications(vector["source"]):
            rows.setdefault((vector["rule"], name), []).append(vector)
    return [(rule, _checked(cases), name, len(cases)) for (rule, name), cases in sorted(rows.items())]


def _checked(cases: list[dict[str, Any]]) -> str:
    values = {name for case in cases for name in case["values"]}
    verdict = {"verdict"} if any(case["verdict"] for case in cases) else set()
    return ", ".join([*sorted(values), *verdict]) or "refusal"


def by_hand() -> list[tuple[str, int, int, int]]:
    """``(rule, all cases, of them without a publication, of them refusals)``, sorted."""
    rows: dict[str, list[int]] = {}
    for vector in vectors():
        counts = rows.setdefault(vector["rule"], [0, 0, 0])
        counts[0] += 1
        counts[1] += not publications(vector["source"])
        counts[2] += bool(vector["refused"])
    return [(rule, *counts) for rule, counts in sorted(rows.items())]


def table(heads: list[str], rows: list[tuple[Any, ...]]) -> str:
    lines = [heads, ["---"] * len(heads), *([str(cell).replace("|", "\\|") for cell in row] for row in rows)]
    return "\n".join("| " + " | ".join(line) + " |" for line in lines)


def page() -> str:
    """The whole page, Markdown."""
    published = by_publication()
    counted = sum(bool(publications(one["source"])) for one in vectors())
    programs = [(what, against, f"`tests/{file}`", cases) for what, against, file, cases in of_the_rules()]
    elsewhere = [(what, against, f"`tests/{file}`") for what, against, file in ELSEWHERE]
    return "\n\n".join([
        "# What the rules are checked against outside",
        "Written by `python -m tests.outside` from the vectors and the tests. \"From memory\" means that the value was "
        "not seen in the publication. A case that names two publications stands in two rows.",
        f"## Published values: {counted} of {len(vectors())} cases",
        table(["Rule", "What is checked", "Against", "Cases"], published),
        "## Every rule: all cases, those by hand calculation or of plain behaviour, and refusals",
        "For the place of a screw in its slot, of a tab in its clip and of a fold's gap no published rule exists: "
        "first principles, calculated by hand beside each case.",
        table(["Rule", "Cases", "Without a publication", "Refusals"], by_hand()),
        "## Programs and libraries that are not ours",
        table(["What is checked", "Against", "Where", "Cases"], programs),
        "## Beyond the rules",
        table(["What is checked", "Against", "Where"], elsewhere),
    ]) + "\n"  # fmt: skip


if __name__ == "__main__":
    PAGE.write_text(page(), "utf-8")
    print(page(), end="")
