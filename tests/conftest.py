"""Property tests draw the same examples on every run, on every machine, and keep none on disk."""

from hypothesis import settings

settings.register_profile(
    "same_every_time", derandomize=True, database=None, deadline=None, max_examples=60
)
settings.load_profile("same_every_time")
