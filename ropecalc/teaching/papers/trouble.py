"""What an instructor is told when a file of theirs cannot be used."""


class PaperError(ValueError):
    """One sentence or several, each naming what is wrong and what to do about it."""

    def __init__(self, source: str, *complaints: str) -> None:
        self.source = source
        self.complaints = complaints
        head = f"{source}: " if source else ""
        super().__init__(head + "\n".join(complaints))
