"""What can be set from outside, read once from the environment; every part gets it handed."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from inspect_app.errors import BadInput

PACKAGE = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """A folder that comes with Seamwalk: in the package of a wheel, beside it in a working tree."""
    for folder in (PACKAGE / name, PACKAGE.parent / name):
        if folder.is_dir():
            return folder
    raise RuntimeError(f"this installation has no folder {name!r}")


@dataclass(frozen=True)
class Settings:
    """``data``: folder of everything kept; ``database_url``: as SQLAlchemy takes it; ``seal_*``: the key that
    seals reports, when given as PKCS#12 (else one is made in ``data``); ``tsa_url``: where to ask for time stamps."""

    data: Path
    database_url: str
    seal_pkcs12: Path | None = None
    seal_passphrase: str = ""
    tsa_url: str | None = None
    host: str = "127.0.0.1"
    port: int = 8000
    static: Path = PACKAGE
    checklists: Path = PACKAGE


def settings_from(environment: Mapping[str, str]) -> Settings:
    """Settings from ``SEAMWALK_DATA``, ``SEAMWALK_DATABASE_URL``, ``SEAMWALK_SEAL_PKCS12``,
    ``SEAMWALK_SEAL_PASSPHRASE``, ``SEAMWALK_TSA_URL``, ``SEAMWALK_HOST`` and ``SEAMWALK_PORT``. Raises ``BadInput``
    naming the variable."""
    data = Path(environment.get("SEAMWALK_DATA") or "data").resolve()
    pkcs12 = environment.get("SEAMWALK_SEAL_PKCS12")
    return Settings(
        data=data,
        database_url=_url(environment.get("SEAMWALK_DATABASE_URL") or sqlite_in(data)),
        seal_pkcs12=Path(pkcs12).resolve() if pkcs12 else None,
        seal_passphrase=environment.get("SEAMWALK_SEAL_PASSPHRASE", ""),
        tsa_url=tsa_url_in(environment),
        host=environment.get("SEAMWALK_HOST") or "127.0.0.1",
        port=port_of(environment.get("SEAMWALK_PORT") or "8000"),
        static=shipped("static"),
        checklists=shipped("checklists"),
    )


def sqlite_in(data: Path) -> str:
    """The embedded database of a data folder."""
    return f"sqlite:///{(data / 'seamwalk.sqlite3').as_posix()}"


def tsa_url_in(environment: Mapping[str, str]) -> str | None:
    """The address of ``SEAMWALK_TSA_URL``, None without one. Raises ``BadInput``."""
    text = environment.get("SEAMWALK_TSA_URL") or None
    if text is not None:
        parts = urlsplit(text)
        if parts.scheme not in ("http", "https") or not parts.hostname:
            raise BadInput("bad_tsa_url", "SEAMWALK_TSA_URL", text)
    return text


def port_of(text: str) -> int:
    """A TCP port. Raises ``BadInput``."""
    if not text.isascii() or not text.isdigit() or not 0 <= int(text) <= 65535:
        raise BadInput("bad_port", "port", text)
    return int(text)


def _url(text: str) -> str:
    # The driver is ours to choose; people write the URL as PostgreSQL's own manual does.
    for prefix in ("postgresql://", "postgres://"):
        if text.startswith(prefix):
            return "postgresql+psycopg://" + text[len(prefix) :]
    if not text.startswith(("sqlite:///", "postgresql+psycopg://")):
        raise BadInput("bad_database_url", "SEAMWALK_DATABASE_URL", text.split("://")[0])
    return text
