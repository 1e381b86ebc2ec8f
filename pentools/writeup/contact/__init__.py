"""The contact sheet of a job's pictures."""
