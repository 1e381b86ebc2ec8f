"""A bench that is made up, with the truth of it."""
