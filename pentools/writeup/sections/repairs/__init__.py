"""The section of the parts mended."""
