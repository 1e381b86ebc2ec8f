"""Back together on a page."""
