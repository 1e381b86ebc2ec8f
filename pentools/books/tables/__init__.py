"""The tables over all jobs: read, kept ready, and written for other programs."""
