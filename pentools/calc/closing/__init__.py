"""Putting a pen together: in which order, what is tested before the next step, how long what sets has to wait, and care."""
