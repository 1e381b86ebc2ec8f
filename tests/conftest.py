"""For every test: no deadline for a single example, since a busy machine is no fault; nothing kept beside the user's own."""

import os
import tempfile

from hypothesis import settings

settings.register_profile("house", deadline=None)
settings.load_profile("house")
os.environ["PENTOOLS_KEPT"] = tempfile.mkdtemp(prefix="pentools-kept-")
