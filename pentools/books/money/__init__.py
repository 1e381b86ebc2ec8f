"""Invoices, their numbers, and what was received."""
