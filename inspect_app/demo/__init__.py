"""The demonstration: an invented job, walked through the real HTTP interface as a phone would."""
