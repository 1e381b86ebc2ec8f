"""Jobs that leave the bench and come to it."""
