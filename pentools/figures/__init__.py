"""Records and results turned into drawings: one function a figure, each with its alt text."""
