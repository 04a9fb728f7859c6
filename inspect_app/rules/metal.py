"""What is offered for a metal's expansion where the job names no value of its own, each with its source.

Sources disagree (steel by 3 %, zinc nearly two to one), so a job's own value with its source always wins, and no rule
falls back on this table by itself: whoever takes a value from it says so among the inputs.
"""

# metal: (decimal text, unit, source, whether the source was read or is from memory)
EXPANSION = {
    "steel": ("0.0000065", "/F", "AISC, structural steel", "read"),
    "aluminium": ("0.0000131", "/F", "materials table, aluminium 1100 and 6061", "read"),
    "copper": ("0.0000094", "/F", "materials table, copper C11000", "read"),
    "stainless": ("0.000016", "/K", "EN 1991-1-5 Table C.1, austenitic", "memory"),
    "zinc": ("0.000022", "/K", "rolled Zn-Cu-Ti sheet along the grain", "memory"),
}


def expansion_of(metal: str) -> "dict | None":
    """``{"value", "unit"}`` offered for a metal, None for one that is not in the table."""
    if metal not in EXPANSION:
        return None
    value, unit, _, _ = EXPANSION[metal]
    return {"value": value, "unit": unit}
