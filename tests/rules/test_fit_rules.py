"""What holds between the rules of a fit check, for any numbers at all."""

from hypothesis import given, settings
from hypothesis import strategies as st

from inspect_app.rules.rulebook import judge

HELD = settings(max_examples=60, deadline=None, derandomize=True)
FEET, INCHES = st.integers(1, 200), st.decimals("0.1", "3", places=3)
LOW, SPAN, SHARE = st.integers(-60, 40), st.integers(20, 240), st.integers(0, 100)


def q(value, unit):
    return {"value": str(value), "unit": unit}


def moves(feet, low, span):
    return {"distance": q(feet, "ft"), "expansion": q("6.5e-6", "/F"), "metal_low": q(low, "F"),
            "metal_high": q(low + span, "F")}  # fmt: skip


@HELD
@given(FEET, LOW, SPAN, SHARE, INCHES, INCHES)
def test_a_return_is_long_enough_where_some_gap_holds_at_any_temperature(feet, low, span, share, long, kept):
    metal = moves(feet, low, span)
    fold = judge("fold_return", {**metal, "return": q(long, "in"), "engagement": q(kept, "in")})
    gap = judge("end_gap@1", {**metal, "return": q(long, "in"), "engagement": q(kept, "in"),
                              "metal_now": q(low + span * share // 100, "F")})  # fmt: skip
    assert (fold["verdict"] == "fail") == ((gap["reason"] or {}).get("code") == "no_gap_holds")


@HELD
@given(FEET, LOW, SPAN, SHARE, INCHES)
def test_a_room_that_is_enough_with_the_metal_unknown_is_enough_at_every_temperature(feet, low, span, share, room):
    asked = {**moves(feet, low, span), "clearance": q(room, "in")}
    unknown = judge("clearance", asked)["verdict"]
    known = judge("clearance", {**asked, "metal_now": q(low + span * share // 100, "F")})["verdict"]
    assert unknown in ("pass", "not_determinable") and (unknown != "pass" or known == "pass")
    coldest = judge("clearance", {**asked, "metal_now": q(low, "F")})["verdict"]
    assert (unknown == "pass") == (coldest == "pass")


@HELD
@given(FEET, LOW, SPAN, st.decimals("0", "0.3", places=3))
def test_a_run_passes_with_a_margin_and_needs_the_aim_beyond_the_centred_one(feet, low, span, error):
    metal = moves(feet, low, span)
    metal.pop("distance")
    found = judge("longest_run@2", {**metal, "slot": q("1", "in"), "shank": q("0.190", "in"),
                                    "offset_error": q(error, "in"), "run": q(feet, "ft")})  # fmt: skip
    values = {name: one["value"] for name, one in found["values"].items()}
    assert (found["verdict"] == "pass") == (values["margin"] >= -1e-6)
    aim = found["verdict"] == "pass" and values["run"] > values["centred"] * (1 + 1e-9)
    assert aim == ((found["reason"] or {}).get("code") == "aim_needed")


@HELD
@given(INCHES, st.decimals("0.5", "30", places=3))
def test_what_slots_reach_is_never_wider_than_approved_and_one_pitch_more_would_be(pitch, spacing):
    found = judge("zone_spacing", {"spacing": q(spacing, "in"), "pitch": q(pitch, "in")})
    reached = found["values"]["reached"]["value"]
    assert (found["verdict"] == "fail") == (pitch > spacing)
    assert reached + float(pitch) > float(spacing) and (found["verdict"] == "fail" or reached <= float(spacing) + 1e-6)
