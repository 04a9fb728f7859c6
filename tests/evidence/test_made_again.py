"""A report made again from what it encloses: whoever holds the seal's own key cannot change a word of it unseen."""

import io

import pytest
from PIL import Image, ImageDraw
from pyhanko.pdf_utils.generic import ArrayObject, DictionaryObject, NumberObject, StreamObject
from pyhanko.pdf_utils.generic import pdf_name as name

from inspect_app.again.stated import pictures_stated
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from tests.evidence.packed import RELEASE
from tests.evidence.printed import (
    ORIGINALS,
    changed,
    copy_of,
    draw,
    drawn_honestly,
    found,
    honest,
    sealed_as,
    with_copies,
)

pytestmark = pytest.mark.xdist_group("made_again")  # one process draws the honest pages once


def note(contents):
    contents["answers"][0]["note"] = "Looks good (invented)"


def reading(contents):
    contents["answers"][1]["reading"]["count"] = 1


def caption(contents):
    contents["photos"][0]["at"] = "2026-11-26T16:40:05.120-05:00"


def figure(contents):
    contents["cover"]["counts"]["fail"] = 0


CHANGES = {"answers[0].note": note, "answers[1].reading.count": reading, "photos[0].at": caption,
           "cover.counts.fail": figure}  # fmt: skip


def test_an_honest_report_comes_out_again_in_words_pages_and_pictures():
    facts = found(sealed_as(honest().contents), anew=True)
    assert {one: fact.status for one, fact in facts.items()} == dict.fromkeys(
        ("contents_follow", "inputs_follow", "pages_follow", "pictures_follow"), HOLDS)  # fmt: skip


@pytest.mark.parametrize("path", CHANGES)
def test_what_is_changed_in_the_contents_is_named_by_its_path(path):
    fact = found(sealed_as(changed(CHANGES[path])), redraw=False)["contents_follow"]
    assert (fact.status, fact.reason) == (FAILS, "comes_out_otherwise")
    assert path in [one["path"] for one in fact.about["differ"]]


def test_a_note_changed_on_the_pages_alone_or_in_the_contents_alone_or_in_both_is_found():
    other = changed(note)
    pages = draw(other, honest().copies)
    told = {where: {one: fact.status for one, fact in found(data).items()} for where, data in {
        "pages": sealed_as(honest().contents, pages), "contents": sealed_as(other), "both": sealed_as(other, pages),
    }.items()}  # fmt: skip
    assert {where: (one["contents_follow"], one["pages_follow"]) for where, one in told.items()} == {
        "pages": (HOLDS, FAILS), "contents": (FAILS, FAILS), "both": (FAILS, HOLDS)}  # fmt: skip


def page_of(writer, at=0):
    return writer.find_page_for_modification(at)[0]


def over_the_cover(writer):
    page = page_of(writer)
    page.get_object()["/Contents"] = writer.add_object(StreamObject(stream_data=b"1 1 1 rg 0 0 612 792 re f"))
    writer.mark_update(page)


def sticker(writer, at=0):
    """An annotation that is drawn over the page, as a stamp of any reader would be."""
    look = StreamObject({name("/Type"): name("/XObject"), name("/Subtype"): name("/Form"), name("/BBox"): ArrayObject(
        NumberObject(side) for side in (0, 0, 100, 20))}, stream_data=b"1 g 0 0 100 20 re f")  # fmt: skip
    page = page_of(writer, at)
    held = page.get_object()
    stamp = writer.add_object(DictionaryObject({
        name("/Type"): name("/Annot"), name("/Subtype"): name("/Stamp"), name("/F"): NumberObject(4),
        name("/Rect"): ArrayObject(NumberObject(side) for side in (54, 600, 154, 620)),
        name("/AP"): DictionaryObject({name("/N"): writer.add_object(look)}),
    }))  # fmt: skip
    before = held["/Annots"] if "/Annots" in held else ArrayObject()
    held["/Annots"] = ArrayObject([*(before.raw_get(at) for at in range(len(before))), stamp])
    writer.mark_update(page)


def on_the_seal_s_page(writer):
    sticker(writer, drawn_honestly()[1]["seal"]["page"] - 1)


def opens_elsewhere(writer):
    writer.root["/OpenAction"] = DictionaryObject({name("/S"): name("/URI")})
    writer.update_root()


def is_called_otherwise(writer):
    said = writer.root["/Metadata"]
    title = b"<rdf:Description xmlns:dc='http://purl.org/dc/elements/1.1/'><dc:title>Accepted (invented)</dc:title>"
    said._data = said.data.replace(b"</rdf:RDF>", title + b"</rdf:Description></rdf:RDF>")
    writer.mark_update(writer.root.raw_get("/Metadata"))


def a_free_box_is_filled(writer):
    field = writer.root["/AcroForm"]["/Fields"][1]
    field["/AP"]["/N"]._data = b"1 g 0 0 100 20 re f"
    writer.mark_update(writer.root["/AcroForm"]["/Fields"].raw_get(1))


def a_box_is_moved(writer):
    field = writer.root["/AcroForm"]["/Fields"][2]
    field["/Rect"] = ArrayObject(NumberObject(side) for side in (0, 0, 612, 792))
    writer.mark_update(writer.root["/AcroForm"]["/Fields"].raw_get(2))


@pytest.mark.parametrize("paint", [over_the_cover, sticker, on_the_seal_s_page, opens_elsewhere, is_called_otherwise,
                                   a_free_box_is_filled, a_box_is_moved])  # fmt: skip
def test_what_is_painted_in_the_very_update_that_seals_is_found(paint):
    fact = found(sealed_as(honest().contents, paint=paint), originals=None)["pages_follow"]
    assert (fact.status, fact.reason) == (FAILS, "painted_in_sealing"), fact


def retouched(data):
    image = Image.open(io.BytesIO(data))
    ImageDraw.Draw(image).rectangle((300, 260, 420, 320), fill="#9fb0b8")
    out = io.BytesIO()
    image.save(out, "JPEG", quality=85)
    return out.getvalue()


def encoded_again(data):
    out = io.BytesIO()
    Image.open(io.BytesIO(data)).save(out, "JPEG", quality=70)
    return out.getvalue()


@pytest.mark.parametrize("spoil, status, reason", [(retouched, FAILS, "other_picture"),
                                                   (encoded_again, UNKNOWN, "copy_alike")])  # fmt: skip
def test_a_printed_picture_that_shows_something_else_is_false_and_one_of_another_encoder_is_not(spoil, status, reason):
    sha256 = list(ORIGINALS)[-1]  # the other stands in the log alone: what passes is not printed
    copies = honest().copies | {sha256: spoil(copy_of(ORIGINALS[sha256]))}
    contents = with_copies(honest().of, copies)
    facts = found(sealed_as(contents, draw(contents, copies)))
    assert (facts["pictures_follow"].status, facts["pictures_follow"].reason) == (status, reason)
    assert (facts["contents_follow"].status, facts["pages_follow"].status) == (HOLDS, HOLDS)


def test_a_picture_s_own_time_is_its_file_s_and_without_the_file_nobody_knows():
    def later(contents):
        for photo in contents["photos"]:
            photo["exif_time"] = "2026:11:25 16:40:00"
            photo["clocks"] = "same"

    data = sealed_as(changed(later))
    assert (found(data)["pictures_follow"].reason, found(data)["contents_follow"].status) == ("other_facts", HOLDS)
    alone = found(data, originals=None)["pictures_follow"]
    assert (alone.status, alone.reason) == (UNKNOWN, "no_originals")
    gone = found(data, originals={"0": b""})["pictures_follow"]
    assert (gone.status, gone.reason) == (UNKNOWN, "original_gone")


def test_a_report_cannot_say_of_a_received_photo_that_it_never_came_and_only_that_it_was_lost():
    never = found(sealed_as(with_copies(honest().of, {}, {"held": False})), redraw=False)["contents_follow"]
    assert (never.status, never.reason) == (FAILS, "comes_out_otherwise"), "its receipt is enclosed"
    contents = with_copies(honest().of, {}, {"held": False, "lost": "lost"})
    lost = found(sealed_as(contents, draw(contents, {})))
    assert lost["contents_follow"].status == HOLDS
    assert (lost["pictures_follow"].status, lost["pictures_follow"].reason) == (UNKNOWN, "said_lost")


def test_of_a_photo_that_a_finding_alone_names_nobody_told_its_file_s_own_time():
    told = {"held": True, "lost": None, "copy": None, "undecodable": None, "width": 4, "height": 3}
    one = {"sha256": "a" * 64, "role": "after", **told}
    contents = {"photos": [], "findings": [{"pictures": [one]}], "daily": [], "survey": None}
    assert pictures_stated(contents) == {"a" * 64: told}


@pytest.mark.parametrize("change", [lambda told: told["answers"].append(told["answers"][0]),
                                    lambda told: told["answers"].pop(), lambda told: told.update(more=1),
                                    lambda told: told["job"].pop("place")])  # fmt: skip
def test_what_is_put_in_or_left_out_is_found_too(change):
    assert found(sealed_as(changed(change)), redraw=False)["contents_follow"].status == FAILS


def deep(levels):
    told = []
    for _ in range(levels):
        told = [told]
    return told


SHAPELESS = {
    "no copy": lambda told: [one.pop("copy") for one in told["photos"]],
    "no reason": lambda told: [one.pop("undecodable") for one in told["photos"]],
    "a number for a photo": lambda told: told["photos"][0].update(sha256=5),
    "a list for a photo": lambda told: told["photos"][0].update(sha256=[5]),
    "a name of megabytes": lambda told: told.update({"x" * 5_000_000: 1}),
    "a deep release": lambda told: told["made_with"].update(version=deep(400)),
    "a crowd of members": lambda told: told.update(answers=[0] * 100_000),
}


@pytest.mark.parametrize("shape", SHAPELESS)
def test_contents_of_no_shape_are_false_in_few_words_and_end_nothing(shape):
    facts = found(sealed_as(changed(SHAPELESS[shape])))
    assert facts["contents_follow"].status == FAILS
    assert len(str(facts["contents_follow"].about)) < 20_000
    assert set(facts) == {"contents_follow", "inputs_follow", "pages_follow", "pictures_follow"}


@pytest.mark.parametrize("form", [2, deep(400), None])
def test_contents_of_a_form_that_nobody_knows_are_not_determinable(form):
    fact = found(sealed_as(changed(lambda told: told.update(v=form))), redraw=False)["contents_follow"]
    assert (fact.status, fact.reason) == (UNKNOWN, "other_form") and len(fact.about["form"]) < 200


@pytest.mark.parametrize("spell", [lambda data: data.replace(b"{", b'{"cover": {"status": "all well"},', 1),
                                   lambda data: b" " + data], ids=["a name twice", "a blank"])  # fmt: skip
def test_contents_that_another_reader_reads_otherwise_are_false(spell):
    fact = found(sealed_as(honest().contents, spell=spell), redraw=False)["contents_follow"]
    assert (fact.status, fact.about["path"]) == (FAILS, "contents.json")


def test_what_another_release_made_is_never_called_false():
    other = RELEASE | {"contents": "0" * 64, "pages": "0" * 64}
    pages = draw(changed(note), honest().copies)
    facts = found(sealed_as(changed(reading), pages), release=other)
    assert (facts["contents_follow"].status, facts["contents_follow"].reason) == (UNKNOWN, "other_release")
    assert facts["contents_follow"].about["path"] == "answers[1].reading.count"
    assert (facts["pages_follow"].status, facts["pages_follow"].reason) == (UNKNOWN, "drawn_by_another_release")
    assert found(sealed_as(honest().contents), release=other)["contents_follow"].status == HOLDS


def test_contents_of_another_form_or_without_their_checklists_are_not_determinable_and_of_no_shape_are_false():
    def cases(change):
        return found(sealed_as(changed(change)), redraw=False)["contents_follow"]

    assert cases(lambda told: told.update(v=2)).reason == "other_form"
    assert cases(lambda told: told["hashes"].update(definitions=[])).status == FAILS, "it names none, and had one"
    assert (cases(lambda told: told.pop("cautions")).status, cases(lambda told: told.pop("survey")).status) == (
        FAILS, FAILS)  # fmt: skip
    assert cases(lambda told: told.update(scope=7)).status == FAILS
    assert cases(lambda told: told["photos"][0].update(held=False)).status == FAILS, "its receipt is enclosed"
