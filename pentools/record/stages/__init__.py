"""One module a stage: its kinds of entry, where it stands, and what ``pentools check`` says of it."""
