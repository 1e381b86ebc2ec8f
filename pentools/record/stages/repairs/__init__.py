"""Parts mended: what was done to them, tried on a hidden place, and sent out."""
