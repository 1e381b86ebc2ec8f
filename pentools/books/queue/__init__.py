"""Where every pen stands: what can be worked on, what waits for whom, parcels and parts wanted."""
