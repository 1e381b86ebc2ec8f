"""Seals, sacs, threads and tools."""
