"""Passkeys, and the challenges that were spent on them"""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "passkey",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("person", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("public_key", sa.Text(), nullable=False),
        sa.Column("sign_count", number, nullable=False),
        sa.Column("added_at", sa.String(), nullable=False),
        sa.Column("used_at", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
    )
    with op.batch_alter_table("passkey", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_passkey_person"), ["person"], unique=False)
    op.create_table(
        "spent_challenge",
        sa.Column("challenge", sa.String(), nullable=False),
        sa.Column("until", number, nullable=False),
        sa.PrimaryKeyConstraint("challenge"),
    )
    with op.batch_alter_table("spent_challenge", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_spent_challenge_until"), ["until"], unique=False)
