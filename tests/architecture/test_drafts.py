"""Several people hold one phone: whatever is half written is somebody's, and no screen opens another person's."""

import re

from tests.architecture.tree import files, source

CALL = re.compile(r"(?<!function )\b(?:useDraft|saveDraft|loadDraft|dropDraft)\(\s*([^,)\s]+)")
KEEPERS = ("static/frame/draft.js", "static/storage/drafts.js")


def whose(text: str) -> list[str]:
    """The first argument of each call that keeps, finds or drops a draft."""
    return CALL.findall(text)


def test_every_draft_is_that_of_the_person_who_holds_the_phone() -> None:
    screens = {name: whose(source(name)) for name in files() if name.endswith(".js") and name.startswith("static/")}
    asked = {name: found for name, found in screens.items() if found and name not in KEEPERS}
    assert len(asked) > 15
    assert {name: found for name, found in asked.items() if set(found) != {"person.id"}} == {}


def test_a_draft_of_nobody_in_particular_would_be_seen() -> None:
    assert whose("const [a] = useDraft('all', key, {})\nsaveDraft(person.id, key)") == ["'all'", "person.id"]
