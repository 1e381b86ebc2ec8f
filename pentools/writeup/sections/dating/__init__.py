"""Dating evidence and old money."""
