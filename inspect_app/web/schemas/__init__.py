"""Wire schemas: the shape of requests and answers, and nothing else. No schema reads the database."""
