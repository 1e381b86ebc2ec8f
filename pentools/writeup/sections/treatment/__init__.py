"""Heat, soaks, mixtures and opening."""
