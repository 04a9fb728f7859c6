"""Firms, invitations, reviewers' links, the trail, phones' names and last contact, photos kept apart"""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.add_column("membership", sa.Column("firm", sa.String(), nullable=True))
    op.add_column("person", sa.Column("sign_ins_from", sa.String(), nullable=True))
    op.create_table(
        "firm",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("added_at", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("name"),
    )
    op.create_table(
        "job_firm",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("firm", sa.String(), nullable=False),
        sa.Column("side", sa.String(), nullable=False),
        sa.Column("areas", sa.Text(), nullable=True),
        sa.Column("since", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(["firm"], ["firm.id"]),
        sa.PrimaryKeyConstraint("job", "firm"),
    )
    op.create_table(
        "invitation",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("firm", sa.String(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.Column("by", sa.String(), nullable=False),
        sa.Column("made_at", sa.String(), nullable=False),
        sa.Column("expires", sa.String(), nullable=False),
        sa.Column("secret", sa.String(), nullable=False),
        sa.Column("used_at", sa.String(), nullable=True),
        sa.Column("used_by", sa.String(), nullable=True),
        sa.Column("withdrawn_at", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(["by"], ["person.id"]),
        sa.ForeignKeyConstraint(["firm"], ["firm.id"]),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("secret"),
    )
    op.create_index("ix_invitation_job", "invitation", ["job"])
    op.create_table(
        "viewer_link",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("by", sa.String(), nullable=False),
        sa.Column("made_at", sa.String(), nullable=False),
        sa.Column("expires", sa.String(), nullable=False),
        sa.Column("secret", sa.String(), nullable=False),
        sa.Column("withdrawn_at", sa.String(), nullable=True),
        sa.Column("seen", number, nullable=False),
        sa.ForeignKeyConstraint(["by"], ["person.id"]),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("secret"),
    )
    op.create_index("ix_viewer_link_job", "viewer_link", ["job"])
    op.create_table(
        "device_contact",
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=True),
        sa.Column("last_contact", sa.String(), nullable=True),
        sa.PrimaryKeyConstraint("kid"),
    )
    op.create_table(
        "quarantine_photo",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("sha256", sa.String(), nullable=False),
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("size", number, nullable=False),
        sa.Column("type", sa.String(), nullable=False),
        sa.Column("received_at", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("job", "sha256"),
    )
    op.create_index("ix_quarantine_photo_kid", "quarantine_photo", ["kid"])
    op.create_table(
        "trail",
        sa.Column("seq", number, autoincrement=False, nullable=False),
        sa.Column("at", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=True),
        sa.Column("who", sa.String(), nullable=True),
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("facts", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("seq"),
    )
    op.create_index("ix_trail_job", "trail", ["job"])
    for statement in APPEND_ONLY[op.get_bind().dialect.name]:
        op.execute(statement)


# The trail grows only, by the database's own rule: a slip in our code cannot rewrite it either.
APPEND_ONLY = {
    "sqlite": [
        f"CREATE TRIGGER trail_no_{what.lower()} BEFORE {what} ON trail "
        "BEGIN SELECT RAISE(ABORT, 'the trail only grows'); END"
        for what in ("UPDATE", "DELETE")
    ],
    "postgresql": [
        "CREATE FUNCTION trail_grows() RETURNS trigger LANGUAGE plpgsql AS "
        "$$ BEGIN RAISE EXCEPTION 'the trail only grows'; END $$",
        "CREATE TRIGGER trail_grows BEFORE UPDATE OR DELETE ON trail FOR EACH ROW EXECUTE FUNCTION trail_grows()",
    ],
}
