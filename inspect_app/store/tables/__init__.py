"""The tables, one file each. Importing this package makes the metadata whole."""

from inspect_app.store.tables.derived import DerivedJob
from inspect_app.store.tables.device import DeviceRow
from inspect_app.store.tables.device_contact import DeviceContactRow
from inspect_app.store.tables.entry import EntryRow
from inspect_app.store.tables.firm import FirmRow, JobFirmRow
from inspect_app.store.tables.invitation import InvitationRow
from inspect_app.store.tables.manifest import ManifestRow
from inspect_app.store.tables.membership import MembershipRow
from inspect_app.store.tables.passkey import PasskeyRow, SpentChallengeRow
from inspect_app.store.tables.person import PersonRow
from inspect_app.store.tables.photo import PhotoRow
from inspect_app.store.tables.quarantine import QuarantineRow
from inspect_app.store.tables.quarantine_photo import QuarantinePhotoRow
from inspect_app.store.tables.report import ReportRow
from inspect_app.store.tables.report_ask import ReportAskRow
from inspect_app.store.tables.statement import StatementRow
from inspect_app.store.tables.ticket import TicketRow
from inspect_app.store.tables.trail import TrailRow
from inspect_app.store.tables.viewer_link import ViewerLinkRow

__all__ = [
    "DerivedJob", "DeviceContactRow", "DeviceRow", "EntryRow", "FirmRow", "InvitationRow", "JobFirmRow",
    "ManifestRow", "MembershipRow", "PasskeyRow", "PersonRow", "PhotoRow", "QuarantinePhotoRow", "QuarantineRow",
    "ReportAskRow", "ReportRow", "SpentChallengeRow", "StatementRow", "TicketRow", "TrailRow", "ViewerLinkRow",
]
