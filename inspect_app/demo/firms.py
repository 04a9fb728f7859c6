"""The demonstration's firms: who came by invitation, what a phone that was lost still held, who reads by a link."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from flask import Flask

from inspect_app.demo import picture
from inspect_app.demo.followed import CREW, FIRM
from inspect_app.demo.http import Http
from inspect_app.demo.phone import Phone
from inspect_app.people.passwords import made_up

FIRMS = (
    ("Tidewrack Building (invented)", "contractor", None, ("foreman", "inspector")),
    ("Kittiwake Roofing Supply (invented)", "supplier", None, ("office",)),
    ("Vane Structures (invented)", "engineer", None, ("engineer",)),
    ("Lower Quillon Harbour Board (invented)", "owner", None, ("owner",)),
    (FIRM, "sub", ("ferry",), ()),
)
COMES = {"login": "sub", "name": "Lena Batten (invented)", "role": "foreman"}
NOTE = "reviewer-link.txt"


class Gathering:
    """``office``: the administrator's phone, signed in. ``at``: the server's address."""

    def __init__(self, app: Flask, at: str, office: Phone, job: dict[str, Any], now: Callable[[], Any],
                 entropy: Callable[[int], bytes]) -> None:  # fmt: skip
        self.app, self.at, self.office, self.job, self.now, self.entropy = app, at, office, job, now, entropy

    def make(self, folder: Path) -> list[dict[str, str]]:
        """Everybody placed, the sub come by invitation, her first phone lost and its work let in, a reviewer's link in
        ``NOTE``. Gives the people who have come, with their passwords."""
        gannet = self._place()
        lena = self._joins(gannet)
        self._loses_her_phone(lena)
        link = self._asks("POST", "links", {"name": "Owen Docket (invented), claims", "days": 90})
        (folder / NOTE).write_text(link["url"] + "\n", "utf-8")
        return [lena]

    def _place(self) -> str:
        """The firms, with the people who were on the job before; the id of the last."""
        parts = self.app.extensions["seamwalk"]
        for name, side, areas, logins in FIRMS:
            own = None if areas is None else [self.job["areas"][key]["id"] for key in areas if key in self.job["areas"]]
            firm = self._asks("POST", "firms", {"name": name, "side": side, "areas": own})["id"]
            with self.app.app_context(), parts.transactions.writing():
                for login in logins:
                    parts.membership.place(parts.accounts.by_login(login).id, self.job["id"], firm)
        return str(firm)

    def _joins(self, firm: str) -> dict[str, str]:
        asked = {"firm": firm, "role": COMES["role"], "days": 14}
        secret = self._asks("POST", "invitations", asked)["url"].rsplit("/", 1)[1]
        http, person = Http(self.at), {**COMES, "password": made_up()}
        csrf = Phone._good(http.call("GET", "/api/session")).json()["csrf"]
        account = {name: person[name] for name in ("login", "name", "password")}
        Phone._good(http.call("POST", f"/api/invitations/{secret}", account, {"X-Seamwalk-Csrf": csrf}))
        return person

    def _loses_her_phone(self, lena: dict[str, str]) -> None:
        """A finding with its photo, not sent; the phone is revoked, sends it all the same, and it is let in."""
        lost = self._phone(lena, "Lena's phone, lost at the ferry")
        area = next(self.job["areas"][key] for key in ("ferry", "quay", "yard") if key in self.job["areas"])
        photo = lost.keep_photo(self.job["id"], picture.panel(f"{area['body']['name']}, panel 2", self.now()))
        finding = lost.new_id()
        digest = lost.say(self.job["id"], "finding", finding, {
            "walk": None, "area": area["id"], "panel": 2, "severity": "minor", "photos": [photo],
            "required": "Film off the panels before they lie in the sun", "found": "Film left on at the eave end",
            "name": lena["name"], "role": lena["role"],
        })  # fmt: skip
        lost.tell()
        csrf = Phone._good(self.office.http.call("GET", "/api/session")).json()["csrf"]
        Phone._good(self.office.http.call("DELETE", f"/api/devices/{lost.kid}", None, {"X-Seamwalk-Csrf": csrf}))
        lost.send_apart()
        signed = {"name": self.office.person["name"], "role": self.office.person["role"]}
        self.office.say(self.job["id"], "assignment", finding, {
            "finding": finding, "firm": FIRM, "crew": CREW, "by_day": None, "note": "Before the sun is on it.",
            "cause": {"code": None, "words": "Left on to keep the coating from boots."}, **signed,
        })  # fmt: skip
        self.office.say(self.job["id"], "admission", digest, {
            "entry": digest, **signed,
            "reason": "Lena had her phone back within the hour and knows this finding for her own.",
        })  # fmt: skip
        self.office.deliver()
        lost.deliver()
        lost.tell()  # nothing is left on it
        self._phone(lena, "Lena's new phone")

    def _phone(self, person: dict[str, str], device: str) -> Phone:
        phone = Phone(Http(self.at), self.now, self.entropy)
        phone.sign_in(person["login"], person["password"], device)
        return phone

    def _asks(self, method: str, what: str, body: dict[str, Any]) -> dict[str, Any]:
        http = self.office.http
        csrf = Phone._good(http.call("GET", "/api/session")).json()["csrf"]
        reply = http.call(method, f"/api/jobs/{self.job['id']}/{what}", body, {"X-Seamwalk-Csrf": csrf})
        told: dict[str, Any] = Phone._good(reply).json()
        return told
