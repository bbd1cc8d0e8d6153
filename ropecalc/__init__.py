"""Forces in vertical rope-rescue raises, each result derived where it can be read.

Nothing is imported here: `import ropecalc` is quick, and sympy is loaded only when a
derivation is first used.
"""

__version__ = "0.1.0"
