"""The database itself: its own check of its pages, and whether it has this release's tables."""

from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import text

from inspect_app.store.migrate import configured
from inspect_app.upkeep.fault import Fault
from inspect_app.upkeep.snapshot import Snapshot


def check_database(moment: Snapshot) -> list[Fault]:
    """``schema_old`` and ``schema_new`` say that the tables are another release's. PostgreSQL looks after its own pages
    (data checksums, ``amcheck``); SQLite is asked to (https://www.sqlite.org/pragma.html#pragma_integrity_check)."""
    session = moment.session
    faults = []
    if session.get_bind().dialect.name == "sqlite":
        said = [str(line) for line in session.scalars(text("PRAGMA integrity_check(20)"))]
        faults += [Fault("database_damaged", "database", {"why": line}) for line in said if line != "ok"]
        strays = session.execute(text("PRAGMA foreign_key_check")).all()
        faults += [Fault("row_astray", f"table {row[0]}", {"row": row[1], "of": row[2]}) for row in strays]
    connection = session.connection()
    found = MigrationContext.configure(connection).get_current_revision()
    scripts = ScriptDirectory.from_config(configured(connection))
    if found != scripts.get_current_head():
        known = {one.revision for one in scripts.walk_revisions()}
        code = "schema_old" if found is None or found in known else "schema_new"
        faults.append(Fault(code, "database", {"found": found or "—", "wanted": scripts.get_current_head()}))
    return faults
