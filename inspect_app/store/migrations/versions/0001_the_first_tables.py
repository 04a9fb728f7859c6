"""The first tables"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    op.create_table(
        "derived_job",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("up_to", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("people", sa.String(), nullable=False),
        sa.Column("record", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("job"),
    )
    op.create_table(
        "manifest",
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("received_at", sa.String(), nullable=False),
        sa.Column("oldest", sa.String(), nullable=True),
        sa.Column("items", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("kid"),
    )
    op.create_table(
        "person",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("login", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.Column("password", sa.String(), nullable=False),
        sa.Column("added_at", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("login"),
    )
    op.create_table(
        "quarantine",
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("received_at", sa.String(), nullable=False),
        sa.Column("token", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("digest"),
    )
    with op.batch_alter_table("quarantine", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_quarantine_kid"), ["kid"], unique=False)

    op.create_table(
        "report",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("up_to", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("made_at", sa.String(), nullable=False),
        sa.Column("contents", sa.String(), nullable=True),
        sa.Column("file", sa.String(), nullable=True),
        sa.Column("trouble", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("job", "number"),
    )
    op.create_table(
        "statement",
        sa.Column(
            "seq", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), autoincrement=False, nullable=False
        ),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=True),
        sa.Column("n", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("jws", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("seq"),
        sa.UniqueConstraint("digest"),
        sa.UniqueConstraint("job", "n", name="one_chain_per_job"),
    )
    op.create_table(
        "device",
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("person", sa.String(), nullable=False),
        sa.Column("jwk", sa.Text(), nullable=False),
        sa.Column("device", sa.String(), nullable=False),
        sa.Column("enrolled", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("revoked", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("kid"),
    )
    with op.batch_alter_table("device", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_device_person"), ["person"], unique=False)

    op.create_table(
        "entry",
        sa.Column(
            "seq", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), autoincrement=False, nullable=False
        ),
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("subject", sa.String(), nullable=False),
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("token", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["seq"],
            ["statement.seq"],
        ),
        sa.PrimaryKeyConstraint("seq"),
        sa.UniqueConstraint("digest"),
    )
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.create_index("entry_by_job", ["job", "seq"], unique=False)
        batch_op.create_index("entry_by_kind", ["job", "kind"], unique=False)

    op.create_table(
        "membership",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("person", sa.String(), nullable=False),
        sa.Column("since", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("job", "person"),
    )
    with op.batch_alter_table("membership", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_membership_person"), ["person"], unique=False)

    op.create_table(
        "photo",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("sha256", sa.String(), nullable=False),
        sa.Column("size", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("type", sa.String(), nullable=False),
        sa.Column("seq", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.ForeignKeyConstraint(
            ["seq"],
            ["statement.seq"],
        ),
        sa.PrimaryKeyConstraint("job", "sha256"),
        sa.UniqueConstraint("seq"),
    )
