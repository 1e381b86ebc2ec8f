"""Instruments on a cable: what they print, read into the kit's own units."""
