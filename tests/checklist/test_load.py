"""A folder of definitions: what compiles is served, what does not is kept as problems beside it."""

from inspect_app.checklist.load import load_all
from tests.checklist.sample import RULES, TEXT


def test_a_broken_file_never_hides_the_others(tmp_path):
    (tmp_path / "sample-check-3.yaml").write_text(TEXT, "utf-8")
    (tmp_path / "sample-check-10.yaml").write_text(TEXT.replace("version: 3", "version: 10"), "utf-8")
    (tmp_path / "broken-1.yaml").write_text("[", "utf-8")
    (tmp_path / "README.md").write_text("not a definition", "utf-8")
    found = load_all(tmp_path, RULES)
    assert [(one["id"], one["version"]) for one in found.listing()] == [("sample-check", 3), ("sample-check", 10)]
    assert found.newest() == {"sample-check": found.by_version["sample-check", 10]}
    assert [one.code for one in found.problems["broken-1.yaml"]] == ["not_yaml"]
    for digest, compiled in found.by_digest.items():
        assert compiled.digest == digest


def test_a_file_named_for_another_version_is_refused(tmp_path):
    (tmp_path / "sample-check-4.yaml").write_text(TEXT, "utf-8")
    found = load_all(tmp_path, RULES)
    assert found.by_digest == {}
    (problem,) = found.problems["sample-check-4.yaml"]
    assert (problem.code, problem.facts["wanted"]) == ("file_name", "sample-check-3.yaml")
