"""Alembic's entry: run the migrations in the transaction that ``store.migrate`` hands over."""

from alembic import context

from inspect_app.store.database import Table

context.configure(
    connection=context.config.attributes["connection"], target_metadata=Table.metadata, render_as_batch=True
)
with context.begin_transaction():
    context.run_migrations()
