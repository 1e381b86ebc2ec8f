"""Putting a pen back together: the order, what was tested on the way, and what it owes before it goes."""
