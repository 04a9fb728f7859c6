"""The composition root: build every part from settings and hand each what it needs.

Nothing is connected at import. ``create_app`` makes folders, keys and tables where there are none.
"""

from collections.abc import Callable
from functools import cache
from os import urandom

from argon2 import PasswordHasher
from flask import Flask

from inspect_app.checklist.load import load_all
from inspect_app.clock import Clock, system_clock
from inspect_app.entry.uuid7 import uuid7
from inspect_app.errors import BadInput
from inspect_app.intake.admissions import Admissions
from inspect_app.intake.batch import Batches
from inspect_app.intake.completion import Completion
from inspect_app.intake.copy_intake import CopyIntake
from inspect_app.intake.photo_door import PhotoDoor
from inspect_app.intake.pictures import facts, shrink
from inspect_app.intake.uploads import Uploads
from inspect_app.package.make import Packer
from inspect_app.package.page import page
from inspect_app.people.accounts import Accounts
from inspect_app.people.contacts import Contacts
from inspect_app.people.delivery import Delivery
from inspect_app.people.devices import Devices
from inspect_app.people.firms import Firms
from inspect_app.people.invitations import Invitations
from inspect_app.people.membership import Membership
from inspect_app.people.nonces import Nonces
from inspect_app.people.passkeys import Passkeys
from inspect_app.people.passwords import Passwords
from inspect_app.people.scope import Scope
from inspect_app.people.tickets import Tickets
from inspect_app.people.trail import Trail
from inspect_app.people.tries import Tries
from inspect_app.people.viewer_links import ViewerLinks
from inspect_app.report.asks import Asks
from inspect_app.report.authority import Authority
from inspect_app.report.background import LOOKS, Background
from inspect_app.report.countersign import Means
from inspect_app.report.countersigned import Countersigned
from inspect_app.report.holds import Holds
from inspect_app.report.judged import judge_apart, key_apart
from inspect_app.report.make import Maker
from inspect_app.report.release import release
from inspect_app.report.seal_key import SealKey, UnreadableKey, given_key, own_key
from inspect_app.report.shelf import Shelf
from inspect_app.report.source import Source
from inspect_app.settings import Settings
from inspect_app.store.database import db
from inspect_app.store.definitions import DefinitionArchive
from inspect_app.store.log import Log
from inspect_app.store.log_reading import LogReading
from inspect_app.store.manifests import Manifests
from inspect_app.store.migrate import migrate
from inspect_app.store.quarantine import Quarantine
from inspect_app.store.records import Records
from inspect_app.store.server_key import kept_secret, server_key
from inspect_app.store.statements import Statements
from inspect_app.store.transactions import Transactions, prepare
from inspect_app.store.vault import Vault
from inspect_app.store.vault_copies import Copies
from inspect_app.web.bearer import device_from_bearer, device_of_member, require_member
from inspect_app.web.office_desk import OfficeDesk
from inspect_app.web.parts import Parts
from inspect_app.web.photos_desk import PhotoDesk
from inspect_app.web.register import register
from inspect_app.web.reports_desk import look_around, make_asked, make_report
from inspect_app.words import Words

RECOMMENDED = PasswordHasher()  # the library's own parameters: 64 MiB, 3 passes (RFC 9106, low memory)


def create_app(
    settings: Settings,
    clock: Clock = system_clock,
    after_intake: Callable[[str], None] = lambda job: None,
    hasher: PasswordHasher = RECOMMENDED,
) -> Flask:
    """A ready app. ``after_intake(job)`` is called when what arrived may have made a report due; ``hasher``
    makes passwords' hashes. Raises what the file system or the database raises when the data folder cannot
    be used."""
    settings.data.mkdir(mode=0o700, parents=True, exist_ok=True)
    secret = kept_secret(settings.data / "session.key", lambda: urandom(32))
    app = Flask("inspect_app", static_folder=None)
    app.config.update(
        SQLALCHEMY_DATABASE_URI=settings.database_url,
        SQLALCHEMY_ENGINE_OPTIONS={"pool_pre_ping": settings.database_url.startswith("postgresql")},
        SECRET_KEY=secret,
    )
    try:
        db.init_app(app)
    except ModuleNotFoundError as missing:
        raise BadInput("no_driver", "SEAMWALK_DATABASE_URL", missing.name) from missing
    with app.app_context():
        prepare(db.engine)
        parts = build(settings, clock, secret, after_intake, Passwords(hasher))
        migrate(parts.transactions)
    app.extensions["seamwalk"] = parts
    app.extensions["office"] = office_desk(parts)
    app.extensions["photos"] = desk = photo_desk(parts, app.extensions["office"].scope)
    app.extensions["copies"] = copy_intake(parts, desk)
    app.extensions["reports"] = report_maker(parts, desk.copies)
    app.extensions["asks"] = Asks(parts.transactions, clock, app.extensions["reports"].shelf.holds)
    app.extensions["countersigned"] = countersigned_by(parts, app.extensions["reports"])
    app.extensions["packages"] = packer(parts)
    register(app)
    return app


def create_serving_app(
    settings: Settings, clock: Clock = system_clock, hasher: PasswordHasher = RECOMMENDED, looks: float = LOOKS
) -> Flask:
    """An app whose reports are made by themselves, in the background, as they become due
    (``app.extensions["background"]``); a command that does one thing wants ``create_app``. ``looks``: seconds between
    two looks at what other servers of the store left."""
    background = Background(make_report, make_asked, look_around, looks)
    app = create_app(settings, clock, background.due, hasher)
    app.extensions["background"] = background
    with app.app_context():
        app.extensions["reports"].shelf.holds.serve()
        look_around(app)
    background.start(app)
    with app.app_context():
        app.extensions["seamwalk"].completion.look_again()
    return app


def build(
    settings: Settings, clock: Clock, secret: bytes, after_intake: Callable[[str], None], passwords: Passwords
) -> Parts:
    """The parts, wired."""
    key = server_key(settings.data / "server.key")
    transactions = Transactions()
    statements = Statements(transactions, key, clock)
    reading = LogReading(transactions)
    records = Records(transactions, reading)
    completion = Completion(reading, records, after_intake)
    log = Log(transactions, statements, completion.photo_arrived)
    quarantine = Quarantine(transactions, clock)
    membership = Membership(transactions, clock)
    devices = Devices(transactions, statements)
    nonces = Nonces(secret, clock)

    definitions = load_all(settings.checklists)
    archive = DefinitionArchive(settings.data / "definitions")
    archive.keep({digest: compiled.data for digest, compiled in definitions.by_digest.items()})

    def new_id() -> str:
        return uuid7(int(clock().timestamp() * 1000), urandom(10))

    accounts = Accounts(transactions, clock, new_id, passwords)
    admissions = Admissions(
        log, reading, quarantine, accounts, membership, Firms(transactions, clock, new_id), Trail(transactions, clock)
    )
    return Parts(
        settings=settings, clock=clock, new_id=new_id, words=Words(settings.static / "words"),
        definitions=definitions, archive=archive, server_key=key,
        transactions=transactions, statements=statements, log=log, reading=reading, records=records,
        vault=Vault(settings.data / "photos"), quarantine=quarantine,
        manifests=Manifests(transactions, clock), accounts=accounts,
        membership=membership, devices=devices, nonces=nonces,
        delivery=Delivery(secret, clock, nonces, devices), tries=Tries(clock),
        tickets=Tickets(transactions, statements, clock, urandom), passkeys=Passkeys(transactions, clock, accounts),
        batches=Batches(log, quarantine, devices, membership, admissions), completion=completion,
        after_intake=after_intake,
    )  # fmt: skip


def office_desk(parts: Parts) -> OfficeDesk:
    """What the routes about people need."""
    firms = Firms(parts.transactions, parts.clock, parts.new_id)
    made = (parts.new_id, urandom)
    return OfficeDesk(
        firms,
        Invitations(parts.transactions, parts.clock, firms, parts.membership, *made),
        ViewerLinks(parts.transactions, parts.clock, *made),
        Contacts(parts.transactions, parts.manifests, parts.clock),
        Scope(parts.reading, firms, parts.membership),
        Trail(parts.transactions, parts.clock),
        Tries(parts.clock, 20, "too_many_links_tried", "link"),
    )


def photo_desk(parts: Parts, scope: Scope) -> PhotoDesk:
    """What the photo routes need. Display copies lie apart from the vault and can be deleted at will."""
    data, vault, log = parts.settings.data, parts.vault, parts.log
    vault.sweep()
    door = PhotoDoor(log, parts.reading, parts.quarantine, parts.devices, scope)
    uploads = Uploads(data / "uploads", vault, door, lambda: parts.clock().timestamp())
    copies = Copies(data / "copies", vault, shrink)
    return PhotoDesk(uploads, vault, copies, log, scope, parts.words, lambda: device_from_bearer("quarantine"),
                     device_of_member, require_member)  # fmt: skip


def copy_intake(parts: Parts, desk: PhotoDesk) -> CopyIntake:
    """What brings in saved copies: what is in them goes the ways that phones' own sending goes."""
    door = PhotoDoor(parts.log, parts.reading, parts.quarantine, parts.devices, desk.scope)
    return CopyIntake(parts.batches, parts.completion, door, desk.vault, parts.reading, parts.quarantine,
                      parts.devices, desk.uploads.caps.photo)  # fmt: skip


def report_maker(parts: Parts, copies: Copies) -> Maker:
    """What makes reports; the key that seals them is read or made when the first one is."""
    source = Source(
        parts.transactions, parts.reading, parts.archive, parts.vault, copies, parts.server_key, facts,
        lambda job: len(parts.quarantine.tokens(job)),
    )
    holds = Holds(parts.settings.data / "holds")
    shelf = Shelf(parts.settings.data / "reports", parts.transactions, parts.clock, holds)
    means = signing_means(parts.settings, parts.words)
    # Asked for at once: files that are replaced under a running server are not those that it runs.
    made_with = release(parts.settings.static / "words", means.fonts)
    return Maker(source, shelf, parts.words, means.fonts, lambda: seal_key(parts), parts.clock, made_with,
                 means.authority)  # fmt: skip


def signing_means(settings: Settings, words: Words) -> Means:
    """What a signature on a report is made with, whether on this server or on a file from anywhere."""
    return Means(words, settings.static / "vendor", Authority(settings.tsa_url) if settings.tsa_url else None)


def countersigned_by(parts: Parts, maker: Maker) -> Countersigned:
    """What puts second signatures on the maker's reports."""
    means = signing_means(parts.settings, parts.words)
    return Countersigned(maker.shelf, parts.statements, parts.reading, means, parts.clock, judge_apart,
                         key_apart)  # fmt: skip


def packer(parts: Parts) -> Packer:
    """What makes evidence packages. They come out also where the key that seals reports cannot be read."""

    def fingerprint() -> str | None:
        try:
            return seal_key(parts).fingerprint
        except UnreadableKey:
            return None

    data = parts.settings.data
    return Packer(
        parts.transactions, parts.reading, parts.archive, parts.vault, parts.server_key, data / "reports",
        data / "packages", cache(lambda: page(parts.settings.static)), fingerprint,
        lambda job: len(parts.quarantine.tokens(job)),
    )  # fmt: skip


def seal_key(parts: Parts) -> SealKey:
    """The firm's own key when one is given, else the one of this server, made the first time."""
    settings = parts.settings
    if settings.seal_pkcs12 is not None:
        return given_key(settings.seal_pkcs12, settings.seal_passphrase)
    return own_key(settings.data / "seal", f"Seamwalk server {parts.server_key.kid[:12]}", parts.clock())
