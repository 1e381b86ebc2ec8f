"""Papers that go with the pen, a printed page each: the proposal, the care card, the slip of parts, the packing list."""
