"""What ``checklists/README.md`` shows and lists is what the compiler takes."""

import re

from inspect_app.checklist.compile import Compiled, compile_text
from inspect_app.checklist.paths import PATHS, READINGS
from inspect_app.checklist.schema import Definition, Item
from inspect_app.settings import shipped
from tests.checklist.sample import RULES

README = (shipped("checklists") / "README.md").read_text("utf-8")


def test_its_example_compiles():
    (text,) = re.findall(r"```yaml\n(.*?)```", README, re.S)
    found = compile_text(text, RULES)
    assert isinstance(found, Compiled), found


def test_it_lists_every_path_and_reading():
    rows = dict(re.findall(r"^\| `(\w+)\.` \| (.*) \|$", README, re.M))
    for root in ("job", "assembly", "area", "walk", "station", "zone"):
        known = {path.removeprefix(root + ".") for path in PATHS if path.startswith(root + ".")}
        assert set(re.findall(r"`([^`]+)`", rows[root])[0].split()) == known, root
    for instrument, leaves in READINGS.items():
        assert instrument in rows["reading"] and all(name in rows["reading"] for name in leaves)


def test_it_explains_every_field():
    for name in {*Definition().fields, *Item().fields}:
        assert re.search(rf"\b{name}\b", README), name
