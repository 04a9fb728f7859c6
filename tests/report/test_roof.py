"""The roof, its coverage and its lots on the page: what is drawn is where it is, and what is sealed stays sealed."""

import math

import pytest

from inspect_app.evidence.lots_told import OF_THE_JOB
from inspect_app.report.contents import report_contents
from inspect_app.report.flagged import flagged
from inspect_app.report.pages.drawn_strip import drawn_words, known_of
from inspect_app.report.pages.ground import zone_lines
from inspect_app.report.pages.hatch import HATCH, STATES, _lines
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.outline import Outline
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.photos_section import sorted_out
from inspect_app.report.pages.risk_figure import curve_of
from inspect_app.report.pages.roof_plan import placed_areas
from inspect_app.report.pages.scope_section import not_seen_texts
from inspect_app.report.pages.series_figure import HEIGHT, draw_series
from inspect_app.report.pages.voice import Voice
from tests.evidence.drawn import site
from tests.report.laid_out import WORDS, lay_out, sample_contents, texts_of
from tests.report.sample import OPTIONS, log

SITE = site()
RECORD = SITE.record()
PEOPLE = {one.person: {"name": one.person, "role": one.role, "kids": [one.kid]} for one in SITE.authors}
CONTENTS = report_contents(RECORD, PEOPLE, {}, log(), {}, OPTIONS)
SEALED = [stop for lot in CONTENTS["lots"] for stop in lot["stops"] if stop["state"] == "sealed"]


def page(contents, language="en"):
    return Page(contents, Voice(WORDS, language, "US"), lambda _: None)


def q(value, unit):
    return {"value": value, "unit": unit}


def test_the_contents_carry_the_record_s_own_coverage_series_and_bounds():
    assert {name: CONTENTS[name] for name in OF_THE_JOB} == {name: RECORD[name] for name in OF_THE_JOB}
    assert [lot["decision"] for lot in CONTENTS["lots"]] == [
        RECORD["lots"][one["lot"]]["decision"] for one in CONTENTS["lots"]
    ]
    assert [lot["n"] for lot in sorted(CONTENTS["lots"], key=lambda lot: lot["lot"])] == [1, 2]


def text_of(contents, folder):
    return " ".join(" ".join(texts_of(lay_out(contents)[0], folder)).split())


def test_coverage_lots_and_limits_are_printed_with_their_figures(tmp_path):
    counts, text = CONTENTS["coverage"][SITE.area]["counts"], text_of(CONTENTS, tmp_path)
    assert counts["covered_unseen"] > 0 and counts["to_come"] > 0
    for state in ("covered_unseen", "to_come", "open"):
        assert f"{counts.get(state, 0)} {WORDS.say('coverage.' + state)}" in text
    assert "Lot 2" in text and WORDS.say("lot.state.open") in text
    assert WORDS.say("report.limit.tickets")[:60] in text and WORDS.say("report.series_head") in text


def test_they_are_printed_in_spanish_on_a4_in_si_too(tmp_path):
    text = text_of(CONTENTS | {"language": "es", "units": "SI", "paper": "a4"}, tmp_path)
    assert "Lote 2" in text and "cubierto sin ver" in text and WORDS.say("lot.state.open", "es") in text
    assert WORDS.say("report.limit.tickets", "es")[:60] in text


def test_a_sealed_panel_is_counted_on_the_page_and_never_named():
    assert SEALED and all("panel" not in stop and "places" not in stop for stop in SEALED)
    second = next(lot for lot in CONTENTS["lots"] if lot["n"] == 2)
    sealed = [stop for stop in second["stops"] if stop["state"] == "sealed"]
    words = drawn_words(page(CONTENTS), second)
    assert f"{len(sealed)} drawn panels stay sealed" in words and words.count(":") == len(
        {known_of(stop) for stop in second["stops"]} - {"sealed"}
    )


def test_a_panel_bad_in_one_severity_is_bad_whatever_the_others_are():
    stop = {"state": "looked", "results": {"critical": "good", "major": "bad"}}
    assert known_of(stop) == "bad"
    assert known_of({"state": "looked", "results": {"critical": "good", "major": "unknown"}}) == "unknown"
    assert known_of({"state": "not_attended", "results": {"major": "unknown"}}) == "not_attended"


def test_an_area_lies_where_it_was_placed_turned_and_shortened_by_its_slope():
    outline = {"unit": "ft", "points": [["0", "0"], ["64", "0"], ["64", "40"], ["0", "40"]]}
    place = {"unit": "ft", "east": "10", "north": "20", "up": "90"}
    area = {"outline": outline, "slope": q("12", "/12"), "place": place}
    nowhere = [{**place, "east": far} for far in ("x", "nan", "inf", "1e9")]
    upright = {"outline": outline, "slope": q("90", "deg"), "place": place}
    unfit = [{"outline": outline, "place": one} for one in (None, {}, *nowhere)]
    (one,) = placed_areas([area, upright, *unfit])
    foot = 0.3048
    assert one.plan(0, 0) == pytest.approx((10 * foot, 20 * foot))
    # Up-slope lies east, and 40 ft at 45 degrees look 28.28 ft long; along the eave runs to the south.
    assert one.plan(0, 40) == pytest.approx(((10 + 40 * math.cos(math.pi / 4)) * foot, 20 * foot))
    assert one.plan(64, 0) == pytest.approx((10 * foot, (20 - 64) * foot))


@pytest.mark.parametrize("rise", [1, -1, 0])
def test_hatch_lines_reach_every_corner_of_a_box(rise):
    box = (40.0, 10.0, 200.0, 60.0)
    lines = _lines(box, rise, 3.4)
    for x, y in ((40.0, 10.0), (40.0, 60.0), (200.0, 10.0), (200.0, 60.0)):
        apart = min(abs((y - y0) - rise * (x - x0)) for x0, y0, _, _ in lines)
        assert apart <= 3.4 * 1.5
    assert set(HATCH) == set(STATES)


def test_a_line_stands_only_where_one_zone_meets_another():
    outline = {"unit": "ft", "points": [["0", "0"], ["4", "0"], ["4", "10"], ["0", "10"]]}
    shape = Outline({"outline": outline, "coverage": q("1", "ft"), "start": "left"})
    side, middle = [[0, 2, "corner"], [2, 10, "edge"]], [[0, 4, "edge"], [4, 10, "field"]]
    bands = [{"from": 1, "to": 1, "runs": side}, {"from": 2, "to": 4, "runs": middle}]
    assert sorted(zone_lines(shape, bands)) == [((0, 2), (1, 2)), ((1, 0), (1, 2)), ((1, 4), (1, 10)), ((1, 4), (4, 4))]
    assert zone_lines(shape, [{"from": 1, "to": 4, "runs": [[0, 5, "field"], [5, 10, "field"]]}]) == []


def test_what_a_plan_lets_through_is_drawn_only_where_chance_is_left():
    major = {"n": 5, "drawn": 5, "dropped": 0, "reject": 1, "risk": {"10": 0.369}, "plan": {"n": 5, "size": 60}}
    lot = {"closed": True, "decision": {"by": {"major": major}}}
    assert curve_of(lot, "major") == (5, 0) and curve_of(lot, "minor") is None
    for change in ({"n": 0}, {"reject": 6}, {"plan": {"n": 5, "size": 5}}, {"plan": None}):
        assert curve_of(lot | {"decision": {"by": {"major": major | change}}}, "major") is None


def test_flags_of_one_kind_are_one_caution_with_their_places():
    told = {
        "stations": [{"digest": f"s{n}", "n": n} for n in (1, 2, 3)],
        "lots": [{"digest": "l", "lot": "kid/work/0", "n": 4}],
        "photos": [{"digest": "p", "area": "quay", "panel": 7}],
    }
    late = [("s3", {}), ("s1", {"other": "kid/work/0"}), ("p", {})]
    flags = [{"digest": digest, "code": "looked_after_cover", "facts": facts} for digest, facts in late]
    flags += [{"digest": "l", "code": "lot_laxer", "facts": {}}, {"digest": "o", "code": "orphan"}]
    late, laxer = [one["facts"] for one in flagged({"flags": flags}, told)]
    assert (laxer["flag"], laxer["lots"], laxer["count"]) == ("lot_laxer", [4], 1)
    assert (late["count"], late["stations"], late["lots"]) == (3, [1, 3], [4])
    assert late["panels"] == [{"area": "quay", "panel": 7}] and late["digests"] == ["s3", "s1", "p"]


def test_every_flag_that_the_record_can_raise_has_words():
    codes = {"ticket_twice", "ticket_skipped", "ticket_not_theirs", "lot_laxer", "same_panels", "panel_beyond_area",
             "draw_differs", "looked_after_cover", "released_unseen", "accept_without_document", "lot_unknown",
             "mark_taken_back", "place_not_drawn"}  # fmt: skip
    assert sorted(code for code in codes if f"report.flag.{code}" not in WORDS) == []


def test_one_kind_of_omission_at_many_places_is_one_line():
    told = [{"code": "station_covered", "facts": {"station": n, "area": "x", "panel": n}} for n in (1, 2, 3, 5)]
    texts = not_seen_texts(page(CONTENTS), told)
    assert len(texts) == 1 and "1 to 3, 5" in texts[0]
    assert len(not_seen_texts(page(CONTENTS), told[:3])) == 3


def test_no_photo_is_lost_between_those_drawn_and_those_listed():
    told = sample_contents()
    drawn, listed = sorted_out(told)
    assert sorted(one["n"] for one in [*drawn, *listed]) == [one["n"] for one in told["photos"]]
    legs = [
        {**told["photos"][0], "n": 90 + n, "role": "leg", "lot": "l", "station": None, "sha256": str(n)} for n in (1, 2)
    ]
    drawn, listed = sorted_out(told | {"photos": legs})
    assert [one["n"] for one in drawn] == [91] and [one["n"] for one in listed] == [92]


def test_panels_running_are_said_as_runs():
    assert ranges(page(CONTENTS), [9, 3, 4, 5, 10, 7, 4]) == "3 to 5, 7, 9 to 10"


class Drawn:
    """A canvas that keeps what is written where, and the foot and head of every line."""

    def __init__(self):
        self.words, self.lines = [], []

    def __getattr__(self, name):
        return lambda *told: None

    def line(self, x1, y1, x2, y2):
        self.lines.append((x1, y1, x2, y2))

    def drawString(self, x, y, text):
        self.words.append((y, text))

    drawCentredString = drawString


def test_where_inspection_turned_is_said_above_the_lots_that_followed_and_across_none():
    lots = [{"lot": f"l{n}", "symbol": "RRNA"[n], "day": f"2026-11-2{n}"} for n in range(4)]
    told = {"lots": [{"lot": one["lot"], "n": n} for n, one in enumerate(lots, 1)]}
    drawn = Drawn()
    draw_series(drawn, 400, {"lots": lots, "since": "l1", "inspection": "tightened"}, page(told))
    (turned,) = [y for y, text in drawn.words if text == "from here: Tightened inspection"]
    assert turned < HEIGHT and all(y + 6.2 < turned for y, text in drawn.words if y != turned)
    assert [one for one in drawn.lines if one[0] == one[2] and max(one[1], one[3]) > turned] == [(68, 2, 68, 53)]


def test_a_count_stays_on_the_line_of_its_sign():
    assert page({}).tally([{"result": "pass", "count": 246}]) == "○\xa0246\xa0pass"
