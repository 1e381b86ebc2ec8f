"""What a bench learns from its own jobs, and what it quotes by that."""
