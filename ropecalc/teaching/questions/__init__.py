"""Questions whose answers the library derives, whose numbers are drawn, and whose mistakes have
names."""
