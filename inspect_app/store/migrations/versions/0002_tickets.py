"""Random tickets for draws, by job, key, series and number"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "ticket",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("kid", sa.String(), nullable=False),
        sa.Column("series", sa.String(), nullable=False),
        sa.Column("n", number, autoincrement=False, nullable=False),
        sa.Column("seq", number, nullable=False),
        sa.ForeignKeyConstraint(
            ["seq"],
            ["statement.seq"],
        ),
        sa.PrimaryKeyConstraint("job", "kid", "series", "n"),
        sa.UniqueConstraint("seq"),
    )
