"""For who studies alone: practice that comes back, mock examinations, progress."""
