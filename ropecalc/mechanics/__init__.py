"""The mechanics of the course: one topic a module, each result a derivation or a small solver."""
