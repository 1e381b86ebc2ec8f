"""The panel of putting a pen back together."""
