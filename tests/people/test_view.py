"""What the reviewer's page says of what was recorded."""

import re

from tests.phone import new_uuid
from tests.report.test_make import accept, keep_photo, make


def rows(page, language):
    text = page.get(headers={"Accept-Language": language}).get_data(as_text=True)
    return [re.sub(r"<[^>]+>", " ", row).split() for row in re.findall(r"<tr>(?:(?!</tr>).)*<td.*?</tr>", text, re.S)]


class Page:
    def __init__(self, office):
        self.job, self.chief = office.job()
        self.fay = office.phone(f"fay-{self.job[-4:]}", "foreman", self.job)
        told = {"name": "Owen (invented)", "days": 1}
        headers = {"X-Seamwalk-Csrf": self.chief.csrf}
        made = self.chief.client.post(f"/api/jobs/{self.job}/links", json=told, headers=headers)
        self.client, self.path = office.client(), "/view/" + made.json["url"].rsplit("/", 1)[1]

    def get(self, **asked):
        return self.client.get(self.path, **asked)


def test_the_newest_of_a_kind_is_the_latest_said_and_not_the_last_that_arrived(office):
    page = Page(office)
    late, early = ("2026-11-25T09:00:00.000-05:00", "2026-11-25T13:59:00.000+00:00")  # 14:00 and 13:59 in one zone
    sent = page.fay.send(page.fay.entry("walk", page.job, at=late), page.fay.entry("walk", page.job, at=early))
    assert [one["status"] for one in sent.json["answers"]] == ["accepted"] * 2
    assert ["Walk", "2", "2026-11-25", "09:00"] in rows(page, "en")


def test_a_reviewer_fetches_the_package_and_goes_on_with_it_where_it_broke_off(office):
    page = Page(office)
    address = re.search(r'href="(/view/[^"]+/package\.zip\?pass=[^"]+)"', page.get().get_data(as_text=True))[1]
    whole = page.client.get(address)
    assert whole.status_code == 200 and whole.data.startswith(b"PK")
    rest = page.client.get(address, headers={"Range": "bytes=900-", "If-Range": whole.headers["ETag"]})
    assert rest.status_code == 206 and rest.data == whole.data[900:]
    listed = page.chief.client.get(f"/api/jobs/{page.job}/trail", headers=page.chief.bearer).json
    assert [step["facts"]["name"] for step in listed if step["what"] == "packaged"] == ["Owen (invented)"]
    office.clock.forward(hours=13)
    assert page.client.get(address).status_code == 403


def test_a_pass_for_one_link_opens_no_other(office):
    page, other = Page(office), Page(office)
    given = page.get().get_data(as_text=True).split("package.zip?pass=")[1].split('"')[0]
    assert other.client.get(f"{other.path}/package.zip?pass={given}").status_code == 404
    assert other.client.get(f"{other.path}/package.zip").status_code == 200


def test_kinds_stand_in_the_order_of_their_names_in_the_reader_s_language(office):
    page = Page(office)
    page.fay.send(*(page.fay.entry(kind, page.job) for kind in ("walk", "area", "station")))
    assert [row[0] for row in rows(page, "en")] == ["Job", "Place", "Roof", "Walk"]
    assert [row[0] for row in rows(page, "es")] == ["Área", "Lugar", "Obra", "Recorrido"]


def test_the_button_of_the_report_says_the_report_s_language_in_the_reader_s(office):
    page = Page(office)
    make(office, page.job, language="es")
    for reader, words in (("en", "Report 1, in Spanish (PDF)"), ("es", "Informe 1, en español (PDF)")):
        assert words in page.get(headers={"Accept-Language": reader}).get_data(as_text=True)


def test_a_photo_says_where_it_was_taken_and_when_and_one_that_no_entry_names_stands_alone(office):
    page = Page(office)
    tied, alone = (keep_photo(office, page.job, data) for data in (b"a picture of the seam", b"of nothing"))
    assembly, area, walk, station = (new_uuid() for _ in range(4))
    accept(page.chief, page.chief.entry("assembly", page.job, assembly),
           page.chief.entry("area", page.job, area, {"assembly": assembly, "name": "Quay slope"}))  # fmt: skip
    accept(page.fay, page.fay.entry("walk", page.job, walk, {"areas": [area], "placed": []}),
           page.fay.entry("station", page.job, station, {"walk": walk, "area": area, "panel": 7}),
           page.fay.entry("photo", page.job, tied, {"walk": walk, "station": station, "sha256": tied},
                          at="2026-11-25T09:00:00.000-05:00"))  # fmt: skip
    shown = {
        name: re.findall(r"<br>([^<]+)", item)
        for item in re.findall(r"<li>(.*?)</li>", page.get().get_data(as_text=True), re.S)
        for name in re.findall(r'photos/([0-9a-f]{64})"', item)
    }
    assert shown == {tied: ["Quay slope, panel 7", "2026-11-25 09:00"], alone: []}
