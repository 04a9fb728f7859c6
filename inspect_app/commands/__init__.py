"""The commands of ``seamwalk``, one module each: ``add_to(subparsers)`` and ``run(args) -> exit code``."""
