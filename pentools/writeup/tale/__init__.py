"""What is told to everybody: the restorer's chapters, what carries each, and a few facts."""
