"""The panel of the parts mended."""
