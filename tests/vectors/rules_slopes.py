"""Vectors of a slope felt by a phone, each with the source of its value."""

from tests.vectors.rules_capacity import HAND, q, vector

MINIMUM = {"minimum": q("3", "/12")}


def felt(*degrees: str, times: int = 4) -> list[dict[str, str]]:
    return [q(one, "deg") for one in degrees] * times


FLAT = felt("18.4", "18.4", "18.4", "18.4", "18.4")
FIRST, TURNED = felt("18.9", times=20), felt("17.9", times=20)

VECTORS = [
    vector("typed, as slope@1: 2 percent is below 1/4:12, printed 2 percent (IBC 1507.4.2 item 3)", "slope@2",
           {"slope": q("2", "%"), "minimum": q("0.25", "/12")}, {"percent": [2, "%"]}, "fail", "slope_too_low"),
    vector("14.5 degrees within 1 degree of 3:12 (14.0362)", "slope@2",
           {"slope": q("14.5", "deg"), "uncertainty": q("1", "deg"), **MINIMUM}, {"bound": [1, "deg"]}, "too_close",
           "slope_too_close"),
    vector("the same by simple acceptance: 0.4638 of U = 1 is 0.93 deviations, 17.7 % (normal table)", "slope@2",
           {"slope": q("14.5", "deg"), "uncertainty": q("1", "deg"), "acceptance": "simple", **MINIMUM},
           {"risk": [0.1768, ""]}, "pass", within=5e-4),
    vector("at the limit simple acceptance errs half of the time (ILAC-G8:09/2019)", "slope@2",
           {"slope": q("3", "/12"), "uncertainty": q("1", "deg"), "acceptance": "simple", **MINIMUM},
           {"risk": [0.5, ""]}, "pass", within=1e-9),
    vector("4:12 is 18.4349 degrees: twenty alike give it back; " + HAND, "slope@2",
           {"readings": FLAT, "uncertainty": q("0.5", "deg"), **MINIMUM},
           {"degrees": [18.4, "deg"], "rise": [3.99187, "/12"], "spread": [0, "deg"], "bound": [0.5, "deg"]}, "pass"),
    vector("turned end for end, 18.9 and 17.9: the phone is 0.5 off, and half of its uncertainty is gone; " + HAND,
           "slope@2", {"readings": FIRST, "reversed": TURNED, "uncertainty": q("0.5", "deg"), **MINIMUM},
           {"degrees": [18.4, "deg"], "own_error": [0.5, "deg"], "bound": [0.25, "deg"]}, "pass"),
    vector("one reading gone wild does not move the median; " + HAND, "slope@2",
           {"readings": [*FLAT, q("80", "deg")]}, {"degrees": [18.4, "deg"], "spread": [0, "deg"]}),
    vector("18.3 to 18.5: median deviation 0.1, spread 2 x 1.4826 x 0.1; with 0.4 together 0.4979; " + HAND, "slope@2",
           {"readings": felt("18.3", "18.5", "18.3", "18.5", times=5), "uncertainty": q("0.4", "deg"), **MINIMUM},
           {"degrees": [18.4, "deg"], "spread": [0.29652, "deg"], "bound": [0.4979, "deg"]}, "pass"),
    vector("a phone that is 1 degree wrong passes one way round and fails when turned; " + HAND, "slope@2",
           {"readings": felt("14.6", times=20), "reversed": felt("12.6", times=20), **MINIMUM},
           {"degrees": [13.6, "deg"], "own_error": [1, "deg"]}, "fail", "slope_too_low"),
    vector("a flat roof read a little below level is level", "slope@2", {"readings": felt("-0.2", times=20)},
           {"degrees": [0, "deg"]}),
    vector("nineteen readings are not twenty", "slope@2", {"readings": felt("18.4", times=19), **MINIMUM}, {},
           "not_determinable", "too_few_readings"),
    vector("a phone in the hand", "slope@2",
           {"readings": felt("17", "18", "19", "20", times=5), **MINIMUM}, {}, "not_determinable", "phone_unsteady"),
    vector("the two ways are 10 degrees apart: another line", "slope@2",
           {"readings": felt("24", times=20), "reversed": felt("14", times=20), **MINIMUM}, {"own_error": [5, "deg"]},
           "not_determinable", "phone_turned_elsewhere"),
    vector("typed and felt at once", "slope@2", {"slope": q("3", "/12"), "readings": FLAT}, {}, refused="one_of"),
    vector("nothing at all", "slope@2", MINIMUM, {}, refused="missing"),
    vector("turned without the first way", "slope@2", {"slope": q("3", "/12"), "reversed": FLAT}, {},
           refused="missing"),
    vector("readings of another kind", "slope@2", {"readings": [q("18", "F")] * 20}, {}, refused="not_slopes"),
]  # fmt: skip
