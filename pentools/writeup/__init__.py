"""A job's notebook and record turned into one self-contained HTML page, for the owner or for publication."""
