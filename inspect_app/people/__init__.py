"""People: accounts and roles, the jobs they belong to, their devices' keys and what those may do."""
