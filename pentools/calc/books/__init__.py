"""Numbers over many jobs, honest where they are few."""
