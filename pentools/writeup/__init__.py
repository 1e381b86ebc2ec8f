"""A job's notebook and record turned into one self-contained HTML page, for the client or for publication."""
