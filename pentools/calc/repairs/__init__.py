"""Mending parts: what is fit for which material, and how long it stands."""
