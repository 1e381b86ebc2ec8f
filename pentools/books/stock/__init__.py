"""The drawer and the tool shelf against the jobs."""
