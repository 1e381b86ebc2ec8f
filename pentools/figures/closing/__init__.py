"""Half pages for the wall of the bench."""
