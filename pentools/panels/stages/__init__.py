"""Panels of stages that show a result of their own."""
