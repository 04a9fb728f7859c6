"""What a job says of its instruments wins; what it leaves out is ours and says so."""

import json

import pytest

from inspect_app.entry.kinds import INSTRUMENTS
from inspect_app.record.instruments import OURS, instruments
from inspect_app.rules.unit import change_unit


def test_what_the_job_states_stands_and_the_rest_is_ours():
    own = {"uncertainty": {"value": "0.2", "unit": "mm"}, "source": "checked on a gauge block, invented"}
    told = instruments({"instruments": {"micrometer": own}})
    assert told["micrometer"] == {**own, "own": True}
    assert {name for name in told if not told[name]["own"]} == set(OURS["US"]) - {"micrometer"}
    assert told["tape"]["uncertainty"] == {"value": "0.0625", "unit": "in"}


def test_every_default_is_of_the_dimension_that_an_entry_must_have():
    for units in ("US", "SI"):
        told = instruments({"units": units})
        stated = {name: {"uncertainty": one["uncertainty"], "source": ""} for name, one in told.items()}
        INSTRUMENTS(stated, "body.instruments")
        assert json.loads(json.dumps(stated)) == stated


def test_a_default_is_the_same_in_both_systems_but_for_rounding_and_never_twice_as_good():
    us, si = (instruments({"units": units}) for units in ("US", "SI"))
    assert set(us) == set(si)
    for name in us:
        ours, theirs = us[name]["uncertainty"], si[name]["uncertainty"]
        size = change_unit(float(theirs["value"]), theirs["unit"], ours["unit"])
        assert size == pytest.approx(float(ours["value"]), rel=0.12), name


def test_an_unknown_instrument_of_a_later_release_is_left_alone():
    laser = {"laser": {"uncertainty": {"value": "1", "unit": "mm"}}}
    assert set(instruments({"instruments": laser})) == set(OURS["US"])
