"""A job file becomes signed entries, all of them or none."""

import pytest

from inspect_app.demo.run import SCENARIO
from inspect_app.errors import BadInput, NotAllowed
from inspect_app.intake.job_file import read_yaml
from inspect_app.intake.register_job import register_job


def register(office, page, login="chief", role="administrator"):
    person = office.add(login, role)
    parts = office.parts
    with office.app.app_context():
        return register_job(page, person, parts.definitions.newest(), parts.devices, parts.batches, parts.new_id,
                            parts.clock())  # fmt: skip


def scenario():
    return read_yaml(SCENARIO.read_text("utf-8"))


def test_a_job_file_becomes_a_folded_job(office):
    job = register(office, scenario())
    with office.app.app_context():
        entries = office.parts.reading.job_entries(job)
    assert len(entries) == 5  # the job, two assemblies, two areas


def test_a_part_that_cannot_be_taken_keeps_nothing_and_names_the_field(office):
    page = scenario()
    page["areas"]["yard"]["slope"] = {"value": "steep", "unit": "/12"}
    with pytest.raises(BadInput) as refused:
        register(office, page)
    assert "slope" in refused.value.field
    with office.app.app_context():
        assert office.parts.reading.jobs_with("job") == []


def test_an_area_of_an_unknown_assembly_is_named(office):
    page = scenario()
    page["areas"]["yard"]["assembly"] = "nowhere"
    with pytest.raises(BadInput) as refused:
        register(office, page)
    assert (refused.value.field, refused.value.value) == ("areas.yard.assembly", "nowhere")


def test_a_missing_part_is_named(office):
    page = scenario()
    del page["assemblies"]
    with pytest.raises(BadInput) as refused:
        register(office, page)
    assert refused.value.field == "assemblies"


def test_only_an_administrator_registers(office):
    with pytest.raises(NotAllowed):
        register(office, scenario(), "ford", "foreman")


def test_what_is_no_yaml_is_said_by_line():
    with pytest.raises(BadInput) as refused:
        read_yaml("job:\n  name: [open\n")
    assert refused.value.field.startswith("line ")
