"""The job: its entries, its storage, its stages, what is missing or odd, and its hold points."""
