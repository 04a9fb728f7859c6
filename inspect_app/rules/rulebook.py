"""The rulebook's front: every released rule by name and version."""

from inspect_app.rules import (
    centred,
    clearance,
    clip,
    clip_force,
    clip_fresh,
    clip_seam,
    count,
    draw,
    edge_width,
    end_gap,
    end_gap_fresh,
    fold_return,
    guard,
    head_compared,
    in_force,
    kappa,
    limit,
    limit_accepted,
    longest_run,
    longest_run_2,
    lot_bound,
    movement,
    penetration,
    plan,
    pull_out,
    pull_over,
    risk,
    share_bound,
    slope,
    slope_readings,
    slot,
    slot_by_card,
    spacing,
    spacing_accepted,
    spacing_tested,
    switch,
    thickness,
    thickness_accepted,
    wear,
    window,
    withdrawal,
    zero_plan,
    zone_spacing,
)
from inspect_app.rules.inputs import plain, read_all, system_for
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS

RELEASED = {
    "movement": {"1": movement},
    "window": {"1": window},
    "slot": {"1": slot, "2": slot_by_card},
    "clip": {"1": clip, "2": clip_fresh},
    "slope": {"1": slope, "2": slope_readings},
    "spacing": {"1": spacing, "2": spacing_accepted},
    "spacing_tested": {"1": spacing_tested},
    "thickness": {"1": thickness, "2": thickness_accepted},
    "limit": {"1": limit, "2": limit_accepted},
    "centred": {"1": centred},
    "longest_run": {"1": longest_run, "2": longest_run_2},
    "end_gap": {"1": end_gap, "2": end_gap_fresh},
    "pull_out": {"1": pull_out},
    "pull_over": {"1": pull_over},
    "withdrawal": {"1": withdrawal},
    "head_compared": {"1": head_compared},
    "clip_force": {"1": clip_force},
    "edge_width": {"1": edge_width},
    "guard": {"1": guard},
    "in_force": {"1": in_force},
    "penetration": {"1": penetration},
    "clearance": {"1": clearance},
    "fold_return": {"1": fold_return},
    "zone_spacing": {"1": zone_spacing},
    "clip_seam": {"1": clip_seam},
    "count": {"1": count},
    "plan": {"1": plan},
    "zero_plan": {"1": zero_plan},
    "risk": {"1": risk},
    "share_bound": {"1": share_bound},
    "lot_bound": {"1": lot_bound},
    "draw": {"1": draw},
    "switch": {"1": switch},
    "kappa": {"1": kappa},
    "wear": {"1": wear},
}
NEWEST = {name: str(max([int(version) for version in RELEASED[name]])) for name in RELEASED}


def names() -> list:
    """The names of the rules, sorted, without versions."""
    return sorted(RELEASED)


def full_name(name: str) -> str:
    """``window`` → ``window@1``, the newest version; a full name stays. Raises Refused ``unknown_rule``."""
    parts = name.split("@") if isinstance(name, str) else [""]
    if len(parts) == 1 and parts[0] in NEWEST:
        return parts[0] + "@" + NEWEST[parts[0]]
    if len(parts) == 2 and parts[1] in RELEASED.get(parts[0], {}):
        return name
    raise Refused("unknown_rule", "rule", name if isinstance(name, str) else None)


def describe(name: str) -> dict:
    """Input name → ``{"dimension", "required", "choices", …}`` of a rule. Raises Refused ``unknown_rule``."""
    known: dict = _module(name).INPUTS
    return known


def judge(name: str, inputs: dict, units: "str | None" = None) -> dict:
    """The rule's answer: ``{"rule", "verdict", "reason", "values", "understood", "inputs"}``.

    ``inputs``: quantities, text, integers, booleans, lists, as the rule's ``describe`` says. Values come in the
    system of the inputs, or in ``units`` (``US`` or ``SI``). Raises Refused for input that cannot be judged.
    """
    rule = full_name(name)
    module = _module(rule)
    if not isinstance(inputs, dict):
        raise Refused("not_inputs", "inputs", None)
    if units is not None and units not in SYSTEMS:
        raise Refused("not_choice", "units", units if isinstance(units, str) else None)
    system = units or system_for(module.INPUTS, inputs, module.ORDER)
    try:
        given = read_all(module.INPUTS, inputs, system)
        given["units"] = system
        found: dict = module.judge(given, system)
    except Refused as refused:
        if refused.value is None:  # the rule saw the number only; say it as it was given
            refused.value = plain(inputs.get(refused.field))
        raise
    found["rule"] = rule
    found["inputs"] = inputs
    return found


def _module(name: str):  # type: ignore[no-untyped-def]  # a module; there is no name for that here
    base, version = full_name(name).split("@")
    return RELEASED[base][version]
