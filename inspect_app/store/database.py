"""The tables' common ground: one Flask-SQLAlchemy object, bound to an app by the composition root.

Importing this connects to nothing.
"""

from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import BigInteger, Integer
from sqlalchemy.orm import DeclarativeBase


class Table(DeclarativeBase):
    """What every table is declared from."""


db = SQLAlchemy(model_class=Table)

# SQLite keys a table by its row number only when the column is exactly INTEGER.
Sequence = BigInteger().with_variant(Integer(), "sqlite")
