"""The books of a bench: what is known over all its jobs, kept ready beside the records and never in their place."""
