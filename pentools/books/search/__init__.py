"""Pens that are like one."""
