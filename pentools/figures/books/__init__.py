"""Charts of a bench over many jobs."""
