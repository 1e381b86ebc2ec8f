"""For every test: no deadline for a single example, since a busy machine is no fault."""

from hypothesis import settings

settings.register_profile("house", deadline=None)
settings.load_profile("house")
