"""What lies beside the database and the vault: keys, definitions, finished reports."""

import hashlib
import stat
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import NamedTuple

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from sqlalchemy import select
from sqlalchemy.orm import Session

from inspect_app.entry.base64url import encode
from inspect_app.entry.jwk import Jwk, public_jwk
from inspect_app.store.tables import ReportRow
from inspect_app.store.vault import blocks, hash_of
from inspect_app.upkeep.fault import Fault

SECRETS = ("server.key", "session.key", "seal/seal-key.pem")


class ReportFile(NamedTuple):
    """A finished report: its place below ``reports/``, the digest of its contents, and that of its bytes where it was
    noted when it was shelved."""

    file: str
    contents: str
    sha256: str | None

    @property
    def beside(self) -> str:
        """Its ``contents.json``."""
        return self.file.replace("report-", "contents-").replace(".pdf", ".json")


def server_jwk(data: Path) -> Jwk | None:
    """The public half of the server's key; None where there is no key to be read."""
    try:
        private = serialization.load_pem_private_key((data / "server.key").read_bytes(), None)
    except (OSError, ValueError, TypeError):
        return None
    fits = isinstance(private, ec.EllipticCurvePrivateKey) and private.curve.name == "secp256r1"
    return public_jwk(private) if fits and isinstance(private, ec.EllipticCurvePrivateKey) else None


def check_keys(data: Path) -> list[Fault]:
    """The server's key is there, and nobody but its owner may read the secrets."""
    faults = [] if server_jwk(data) else [Fault("server_key_gone", "server.key")]
    for name in SECRETS:
        file = data / name
        if file.exists() and stat.S_IMODE(file.stat().st_mode) & 0o077:
            faults.append(Fault("secret_open", name, {"mode": f"{stat.S_IMODE(file.stat().st_mode):04o}"}))
    return faults


def ready_reports(session: Session) -> list[ReportFile]:
    asked = select(ReportRow.file, ReportRow.contents, ReportRow.sha256).where(ReportRow.state == "ready")
    found = session.execute(asked.order_by(ReportRow.file))
    return [ReportFile(str(row.file), str(row.contents), row.sha256) for row in found]


def check_reports(data: Path, reports: Iterable[ReportFile]) -> list[Fault]:
    """Every finished report lies where it should, byte for byte, beside contents of the digest it names."""
    faults = []
    for report in reports:
        pdf, beside = data / "reports" / report.file, data / "reports" / report.beside
        try:
            if report.sha256 is None:
                named = f"seamwalk contents sha256 {report.contents}".encode() in pdf.read_bytes()
            else:
                named = hash_of(blocks(pdf)) == report.sha256
            same = hashlib.sha256(beside.read_bytes()).hexdigest() == report.contents
        except OSError:
            faults.append(Fault("report_gone", f"reports/{report.file}"))
            continue
        if not (named and same):
            faults.append(Fault("report_damaged", f"reports/{report.file}"))
    return faults


def check_definitions(data: Path, wanted: Mapping[str, str]) -> list[Fault]:
    """Every kept definition still has the digest it is named by, and each that a job pins is here. ``wanted``:
    ``{digest: a job that pins it}``."""
    files = sorted((data / "definitions").glob("*.json"))
    damaged = [Fault("definition_damaged", f"definitions/{file.name}") for file in files
               if encode(hashlib.sha256(file.read_bytes()).digest()) != file.stem]  # fmt: skip
    gone = sorted(wanted.keys() - {file.stem for file in files})
    return damaged + [Fault("definition_gone", f"definitions/{one}.json", {"job": wanted[one]}) for one in gone]
