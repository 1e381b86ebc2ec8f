"""Weighing, filling and leaking."""
