"""Panels: what a person at the bench sees and types into; a panel shows the record and appends to it."""
