"""Papers for a class: a blueprint and a class list in, a paper and a key for each student out."""
