"""The tables, one file each. Importing this package makes the metadata whole."""

from inspect_app.store.tables.derived import DerivedJob
from inspect_app.store.tables.device import DeviceRow
from inspect_app.store.tables.entry import EntryRow
from inspect_app.store.tables.manifest import ManifestRow
from inspect_app.store.tables.membership import MembershipRow
from inspect_app.store.tables.person import PersonRow
from inspect_app.store.tables.photo import PhotoRow
from inspect_app.store.tables.quarantine import QuarantineRow
from inspect_app.store.tables.report import ReportRow
from inspect_app.store.tables.statement import StatementRow
from inspect_app.store.tables.ticket import TicketRow

__all__ = [
    "DerivedJob", "DeviceRow", "EntryRow", "ManifestRow", "MembershipRow", "PersonRow", "PhotoRow",
    "QuarantineRow", "ReportRow", "StatementRow", "TicketRow",
]
