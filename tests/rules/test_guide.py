"""The contributors' guide lists every rule with the inputs it takes and the values it gives."""

from tests.rules.guide import ROOT, rows


def test_the_guide_s_table_of_rules_is_the_rulebook_s():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert "\n".join(rows()) in guide, "print it anew: python -m tests.rules.guide"
