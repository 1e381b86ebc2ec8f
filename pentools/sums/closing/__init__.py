"""The order of work at the bench, both ways, and what an owner is told of care."""
