"""The invented job's file says of each party what was meant, and that it is invented."""

from inspect_app.demo.run import SCENARIO
from inspect_app.intake.job_file import read_yaml


def test_each_party_has_a_role_and_a_whole_name_that_says_it_is_invented():
    parties = read_yaml(SCENARIO.read_text("utf-8"))["job"]["parties"]
    assert [sorted(one) for one in parties] == [["name", "role"]] * 3  # a bare comma in YAML made a name a field
    assert all(one["name"].endswith("(invented)") for one in parties)
