"""The letter to the owner: what the pen does now, what was wrong, done and left, on one page; then the story."""
