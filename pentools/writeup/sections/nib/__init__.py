"""The nib: looked at, set, smoothed, and what it writes."""
