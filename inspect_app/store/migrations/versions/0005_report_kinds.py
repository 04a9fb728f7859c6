"""What each report speaks of, and the reports that people asked for"""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    # Every report of a release before kinds speaks of the whole job.
    whole = sa.text("""'{"kind":"closeout"}'""")
    with op.batch_alter_table("report", schema=None) as batch_op:
        batch_op.add_column(sa.Column("kind", sa.String(), nullable=False, server_default="closeout"))
        batch_op.add_column(sa.Column("scope", sa.Text(), nullable=False, server_default=whole))
        batch_op.add_column(sa.Column("told", sa.Text(), nullable=True))
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "report_ask",
        sa.Column("id", number, nullable=False),
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("person", sa.String(), nullable=False),
        sa.Column("asked", sa.Text(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("stage", sa.String(), nullable=False),
        sa.Column("share", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=True),
        sa.Column("trouble", sa.Text(), nullable=True),
        sa.Column("asked_at", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
    )
    with op.batch_alter_table("report_ask", schema=None) as batch_op:
        batch_op.create_index("ix_report_ask_job_state", ["job", "state"], unique=False)
