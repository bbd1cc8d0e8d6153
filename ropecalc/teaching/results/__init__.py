"""From returned papers to grades, and to what the class as a whole got wrong."""
