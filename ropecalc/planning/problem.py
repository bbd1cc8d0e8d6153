"""The one error that a site file, a form or a survey table raises."""


class SiteError(ValueError):
    """An input that cannot be used: where it is, what is wrong with it, and what to do.

    ``source`` names the file (or the form), ``where`` the key, row or column in it. The text is
    one line, written for a person who has never seen a program.
    """

    def __init__(self, source: str, where: str, problem: str, remedy: str) -> None:
        self.source = source
        self.where = where
        self.problem = problem
        self.remedy = remedy
        place = f"{source}, {where}" if where else source
        super().__init__(f"{place}: {problem} {remedy}")
