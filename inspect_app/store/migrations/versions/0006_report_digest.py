"""What a finished report's bytes were when it was shelved"""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"


def upgrade() -> None:
    with op.batch_alter_table("report", schema=None) as batch_op:
        batch_op.add_column(sa.Column("sha256", sa.String(), nullable=True))
