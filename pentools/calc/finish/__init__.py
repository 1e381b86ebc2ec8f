"""Abrasives and polish."""
