"""How each call is asked, whole and well formed, by each asker of ``world.py``; what comes back, as one word."""

import base64
import itertools
from collections.abc import Callable
from datetime import timedelta
from typing import Any, NamedTuple

from inspect_app.report.asked import Asked
from inspect_app.report.countersign import look
from tests.copies import files_of, tar
from tests.evidence.sealed import key as key_of
from tests.evidence.sealed import signed_again
from tests.office import PASSWORD
from tests.people.world import ASKERS, PICTURES, SHA, World
from tests.phone import Phone
from tests.report.countersigners import WORD, pkcs12_of

BY_DEVICE = ("/api/entries", "/api/tickets", "/api/manifest", "/api/photos")
TUS = {"Tus-Resumable": "1.0.0"}
SECRET = "S" * 43


class Ask(NamedTuple):
    """One request; ``word`` says what its answer came to, else its status does."""

    path: dict[str, str] = {}
    body: Any = None
    query: dict[str, Any] = {}
    headers: dict[str, str] = {}
    word: Callable[[Any], str] | None = None
    data: bytes | None = None


class Asking:
    """Everything a call may be asked about, made anew where asking it uses it up."""

    def __init__(self, world: World) -> None:
        self.world, self.app = world, world.office.app
        self.desk = self.app.extensions["office"]
        self.clients: dict[str, tuple[Any, str]] = {}
        self.logins = itertools.count()
        self.made: dict[Any, Any] = {}
        phone = world.phones["foreman"]
        self.upload = self._create(phone, SHA["apart"]).headers["Location"].rsplit("/", 1)[1]

    def status(self, asker: str, method: str, rule: str, case: str) -> tuple[str, bytes]:
        """The answer's word and its body."""
        with self.app.app_context():
            ask = self.ask(asker, method, rule, case)
        client, headers = self._client(asker, rule, case)
        path = rule
        for name, value in ask.path.items():
            path = path.replace(f"<{name}>", value).replace(f"<path:{name}>", value)
        assert "<" not in path, path
        sent = {"data": ask.data} if ask.data is not None else {"json": ask.body} if ask.body is not None else {}
        reply = client.open(
            path, method=method, query_string=ask.query, headers=headers | ask.headers,
            environ_base={"REMOTE_ADDR": f"10.0.0.{ASKERS.index(asker)}"}, **sent,
        )  # fmt: skip
        if reply.status_code >= 300:
            return str(reply.status_code), reply.data
        return (ask.word(reply) if ask.word else "yes"), reply.data

    def _client(self, asker: str, rule: str, case: str) -> tuple[Any, dict[str, str]]:
        """A cookie with its token where people ask, a bearer token where phones do; a revoked phone has only that."""
        if asker != "nobody" and (asker == "revoked" or rule.startswith(BY_DEVICE)):
            return self.app.test_client(), self.world.phones[asker].bearer
        once = rule == "/api/session" or case == "with a new account"  # who asks is somebody else afterwards
        if asker not in self.clients or once:
            client = self.app.test_client()
            csrf = client.get("/api/session").json["csrf"]
            if asker != "nobody":
                login = {"login": asker if asker != "stranger" else self.world.phones[asker].person.login,
                         "password": PASSWORD}  # fmt: skip
                csrf = client.post("/api/session", json=login, headers={"X-Seamwalk-Csrf": csrf}).json["csrf"]
            if once:
                return client, {"X-Seamwalk-Csrf": csrf}
            self.clients[asker] = client, csrf
        client, csrf = self.clients[asker]
        return client, {"X-Seamwalk-Csrf": csrf}

    def ask(self, asker: str, method: str, rule: str, case: str) -> Ask:
        """Needs an app context."""
        world, phone = self.world, self.world.phones.get(asker)
        job = {"job": world.job}
        stranger = world.phones["stranger"]
        match f"{method} {rule}":
            case "POST /api/session":
                login = phone.person.login if phone else "nobody"
                return Ask(body={"login": login, "password": PASSWORD})
            case "POST /api/passkeys/options":
                return Ask(body={"person": (phone or stranger).person.id})
            case "POST /api/passkeys" | "POST /api/passkeys/sign-in":
                return Ask(body={"credential": {}, "name": "a passkey"})
            case "DELETE /api/passkeys/<passkey>":
                return Ask({"passkey": "unknown"})
            case "POST /api/devices":
                new = Phone(self.app.test_client(), None)
                return Ask(body={"jwk": new.jwk, "device": "new", "proof": new.proof("enrol")})
            case "POST /api/devices/again":
                known, holder = phone or stranger, phone or Phone(self.app.test_client(), None)
                enrolment = world.office.parts.devices.enrol(known.person, known.jwk, "test")
                return Ask(body={"enrolment": enrolment, "proof": holder.proof("enrol")})
            case "POST /api/delivery":
                return Ask(body={"proof": (phone or Phone(self.app.test_client(), None)).proof("deliver")})
            case "POST /api/entries":
                signer = stranger if case == "signed by another" else phone or stranger
                job_of = world.elsewhere if case == "of another job" and asker != "stranger" else world.job
                area = world.own if asker == "sub" else world.other
                token = signer.entry("walk", job_of, body={"areas": [area], "placed": []})
                return Ask(body={"entries": [token]}, word=lambda reply: reply.json["answers"][0]["status"])
            case "GET /api/entries":
                asked = {"of one": world.job, "of another job": stranger and world.elsewhere}.get(case)
                return Ask(query={"job": asked} if asked else {}, word=lambda reply: self._seen(reply))
            case "POST /api/tickets":
                return Ask(body={"job": world.job, "series": "work", "have": -1})
            case "POST /api/manifest":
                return Ask(body={"items": [], "oldest": None})
            case "POST /api/copies":
                return self._copy(phone or stranger, case)
            case "GET /api/jobs":
                return Ask(word=lambda reply: self._jobs(reply))
            case "GET /api/definitions/<digest>":
                return Ask({"digest": next(iter(world.parts.definitions.by_digest))})
            case "GET /api/photos/receipt":
                return Ask(query={"job": world.job, "sha256": SHA[case]})
            case "GET /photos/<sha256>":
                job_of = world.elsewhere if case.endswith("its own job") else world.job
                return Ask({"sha256": SHA[case.split(",")[0]]}, query={"job": job_of})
            case "POST /api/photos":
                length = len(PICTURES[case])
                told = self._creating(world.job, SHA[case], length)
                return Ask(headers=told, word=lambda reply: ("bring", "receipt")["Seamwalk-Receipt" in reply.headers])
            case "HEAD /api/photos/<upload>" | "DELETE /api/photos/<upload>":
                return Ask({"upload": self.upload}, headers=TUS)
            case "PATCH /api/photos/<upload>" | "POST /api/photos/<upload>":
                told = {**TUS, "Upload-Offset": "0", "Content-Type": "application/offset+octet-stream"}
                return Ask({"upload": self.upload}, headers=told | {"X-HTTP-Method-Override": "PATCH"}, data=b"")
            case "POST /api/jobs/<job>/reports":
                return Ask(job, {"kind": "closeout"})
            case "GET /api/jobs/<job>/reports/asked/<int:identity>":
                asked = self._once("asked report", "", lambda: self.app.extensions["asks"].add(world.job, "x", Asked()))
                return Ask(job | {"int:identity": str(asked.id)})
            case "GET /api/jobs/<job>/reports/<int:number>.pdf":
                return Ask(job | {"int:number": "1"})
            case "GET /api/jobs/<job>/reports/<int:number>/signing":
                return Ask(job | {"int:number": "1"})
            case "POST /api/jobs/<job>/reports/<int:number>/signing":
                self._sealed_anew()
                key = base64.b64encode(pkcs12_of("A second person (invented)")).decode()
                return Ask(job | {"int:number": "1"}, {"pkcs12": key, "passphrase": WORD})
            case "POST /api/jobs/<job>/reports/<int:number>/signed":
                signed = signed_again(self._sealed_anew(), key_of("A third person (invented)"), "Countersignature")
                return Ask(job | {"int:number": "1"}, headers={"Content-Type": "application/pdf"}, data=signed)
            case "POST /api/jobs/<job>/firms":
                return Ask(job, {"name": "Sandling (invented)", "side": "supplier", "areas": None})
            case "POST /api/jobs/<job>/invitations":
                return Ask(job, {"firm": world.firms["whole"], "role": "foreman", "days": 1})
            case "DELETE /api/jobs/<job>/invitations/<invitation>":
                return Ask(job | {"invitation": self._once("invitation", asker, self._invitation)[0]})
            case "GET /api/invitations/<secret>":
                return Ask({"secret": self._once(f"secret {case}", "", lambda: self._secret(case))})
            case "POST /api/invitations/<secret>":
                account = {"login": f"new{next(self.logins)}", "name": "New (invented)", "password": PASSWORD}
                used_up = asker if case in ("as who asks", "with a new account") else ""
                secret = self._once(f"secret {case}", used_up, lambda: self._secret(case))
                return Ask({"secret": secret}, account if case == "with a new account" else {})
            case "POST /api/jobs/<job>/links":
                return Ask(job, {"name": "A reviewer", "days": 1})
            case "DELETE /api/jobs/<job>/links/<link>":
                return Ask(job | {"link": self._once("link", asker, self._link)[0]})
            case "POST /api/devices/<kid>" | "DELETE /api/devices/<kid>":
                whose = {"own": phone or stranger, "a member's": world.phones["revoked"], "a stranger's": stranger}
                person = whose[case].person
                kid = self._once(f"key {person.id}", asker, lambda: self._key(person))
                return Ask({"kid": kid}, {"name": "the white one"} if method == "POST" else None)
            case "POST /api/qr":
                return Ask(body={"text": "x"})
            case "POST /pack":
                return Ask(body={"files": []})
            case "GET /static/<path:name>":
                return Ask({"name": "main.js"})
            case "GET /rulebook/<path:name>":
                return Ask({"name": "rules/window.py"})
        path = job if "<job>" in rule else {}
        if "/view/<secret>" in rule:
            secret = self._once(f"view {case}", "", lambda: self._view(case))
            return Ask({"secret": secret, "sha256": SHA["theirs"], "int:number": "1"})
        return Ask(path)

    def _copy(self, phone: Phone, case: str) -> Ask:
        """A copy of one entry by its asker's own key, or by that of another who belongs to the other job."""
        world = self.world
        signer = world.phones["stranger"] if case == "of another job" else phone
        job = world.elsewhere if case == "of another job" else world.job
        token = signer.entry("walk", job, body={"areas": [world.other], "placed": []})
        return Ask(data=tar(files_of([token], [], phone)), headers={"Content-Type": "application/x-tar"},
                   word=lambda reply: reply.json["items"][0]["status"])  # fmt: skip

    def _sealed_anew(self) -> bytes:
        """The job's report as it was before anybody countersigned it."""
        desk = self.app.extensions["countersigned"]
        desk.judge = look  # in this process: the same answers, sooner
        pdf = desk.shelf.numbered(self.world.job, 1).pdf
        sealed: bytes = pdf.read_bytes()[: look(pdf).ends[0]]
        pdf.write_bytes(sealed)
        return sealed

    def _seen(self, reply: Any) -> str:
        tokens = {one["entry"] for one in reply.json["entries"]}
        unseen = set(self.world.unseen) & tokens
        return "all" if unseen else "part" if set(self.world.said) & tokens else "none"

    def _jobs(self, reply: Any) -> str:
        here = [one for one in reply.json["jobs"] if one["id"] == self.world.job]
        return "none" if not here else "part" if here[0]["partial"] else "all"

    def _once(self, name: str, asker: str, make: Callable[[], Any]) -> Any:
        """Made once for all who ask, and once more for each who is named."""
        if (name, asker) not in self.made:
            self.made[name, asker] = make()
        return self.made[name, asker]

    def _key(self, person: Any) -> str:
        new = Phone(self.app.test_client(), person)
        self.world.parts.devices.enrol(person, new.jwk, "another phone")
        return new.kid

    def _invitation(self) -> tuple[str, str]:
        chief = self.world.phones["administrator"].person.id
        id, secret, _ = self.desk.invitations.make(self.world.job, self.world.firms["whole"], "foreman", 1, chief)
        return id, secret

    def _link(self) -> tuple[str, str]:
        chief = self.world.phones["administrator"].person.id
        id, secret, _ = self.desk.links.make(self.world.job, "A reviewer", 1, chief)
        return id, secret

    def _secret(self, case: str) -> str:
        id, secret = self._invitation()
        if case == "withdrawn":
            self.desk.invitations.withdraw(self.world.job, id)
        if case == "used":
            self.desk.invitations.take(secret, self.world.phones["foreman"].person)
        if case == "expired":
            self._age(self.desk.invitations)
            secret = self._old
        return SECRET if case == "unknown" else secret

    def _view(self, case: str) -> str:
        id, secret = self._link()
        if case == "withdrawn":
            self.desk.links.withdraw(self.world.job, id)
        if case == "expired":
            self._age(self.desk.links)
            secret = self._old
        return SECRET if case == "unknown" else secret

    def _age(self, made: Any) -> None:
        """A link of yesterday's yesterday, by a clock that is put back for it."""
        clock = self.world.office.clock
        clock.now -= timedelta(days=2)
        self._old = (self._invitation if made is self.desk.invitations else self._link)()[1]
        clock.now += timedelta(days=2)

    def _creating(self, job: str, sha256: str, length: int) -> dict[str, str]:
        told = {"job": job, "sha256": sha256, "type": "image/jpeg"}
        metadata = ",".join(f"{name} {base64.b64encode(value.encode()).decode()}" for name, value in told.items())
        return {**TUS, "Upload-Length": str(length), "Upload-Metadata": metadata}

    def _create(self, phone: Phone, sha256: str) -> Any:
        told = self._creating(self.world.job, sha256, len(PICTURES["apart"]))
        return phone.client.post("/api/photos", headers=phone.bearer | told)


