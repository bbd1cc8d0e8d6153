# Needed: Python 3.11 or later, and make.
#
#   make course      open the course in the browser
#   make test        everything that is checked, the quick checks first
#   make notebooks   write the exercises from their source, run all notebooks, renew the manifest
#   make format      put the code in its standard form
#   make bench       run the measurements in tests/bench
#   make mutants     change derivations and mechanics at random: do the tests notice? (half an hour)
#   make test-oldest run the library's tests on the oldest versions that pyproject.toml promises
#   make constraints renew .ci/constraints.txt, the versions that are tested
#   make clean       remove what these commands made
#
# Options of the course go in ARGS:  make course ARGS="--no-browser --port 9000"

PYTHON ?= python3
VENV := .venv
ifeq ($(OS),Windows_NT)
BIN := Scripts
else
BIN := bin
endif
RUN := $(VENV)/$(BIN)/
PIP := -m pip --disable-pip-version-check install --quiet
NOTEBOOKS := $(wildcard lessons exercises solutions)
BENCHES := $(sort $(wildcard tests/bench/*.py))

.PHONY: course test notebooks format bench mutants test-oldest constraints clean check

course: $(VENV)/course
	$(RUN)ropecalc course $(ARGS)

test: $(VENV)/test check
	$(RUN)python -m pytest -q --doctest-modules ropecalc/derivation ropecalc/units.py
	$(RUN)python -m pytest -q -n auto --dist worksteal tests --ignore tests/browser --ignore tests/notebooks
	$(RUN)python -m pytest -q tests/notebooks
	$(RUN)python -m pytest -q -n auto --dist loadfile -p tests.notebooks.records --nbval \
	    --nbval-sanitize-with tests/notebooks/nbval_sanitize.cfg $(NOTEBOOKS)
	$(RUN)python -m pytest -q -rs -n auto --dist loadfile tests/browser

check: $(VENV)/test
	$(RUN)ruff check .
	$(RUN)ruff format --check .
	$(RUN)mypy
	$(RUN)lint-imports

notebooks: $(VENV)/course
	$(RUN)python -m ropecalc.teaching.editions
	$(RUN)python -m ropecalc.teaching.notebooks

format: $(VENV)/test
	$(RUN)ruff check --fix .
	$(RUN)ruff format .

bench: $(VENV)/course
	@$(if $(BENCHES),,echo "There are no measurements in tests/bench.")
	$(foreach bench,$(BENCHES),$(RUN)python $(bench) && ) true

mutants: $(VENV)/mutants
	$(RUN)python -m tests.mutants $(ARGS)

# The venvs. The tested versions are preferred; where they do not exist for this Python, any
# versions that pyproject.toml allows are taken.
$(VENV)/course: pyproject.toml .ci/constraints.txt | $(VENV)/made
	@echo "Setting up; this takes a minute or two, once."
	$(RUN)python $(PIP) --constraint .ci/constraints.txt --editable . \
	    || $(RUN)python $(PIP) --editable .
	@touch $@

$(VENV)/test: $(VENV)/course
	$(RUN)python $(PIP) --constraint .ci/constraints.txt --editable ".[test]"
	@touch $@

$(VENV)/mutants: $(VENV)/test
	$(RUN)python $(PIP) --constraint .ci/constraints.txt --editable ".[test,mutants]"
	@touch $@

$(VENV)/made:
	@$(PYTHON) -c "import sys; sys.exit(sys.version_info < (3, 11))" \
	    || { echo "Python 3.11 or later is needed: make course PYTHON=python3.12"; exit 1; }
	@$(PYTHON) -m venv $(VENV) \
	    || { echo "Python's venv is missing: on Debian, apt-get install python3-venv"; exit 1; }
	@touch $@

test-oldest:
	$(PYTHON) -m venv --clear .venv-oldest
	.venv-oldest/$(BIN)/python .ci/oldest.py > .venv-oldest/oldest.txt
	.venv-oldest/$(BIN)/python $(PIP) --constraint .venv-oldest/oldest.txt --editable ".[test]"
	.venv-oldest/$(BIN)/python -m pytest -q tests --ignore tests/browser --ignore tests/notebooks

constraints:
	$(PYTHON) -m venv --clear .venv-newest
	.venv-newest/$(BIN)/python $(PIP) --editable ".[test,mutants]"
	.venv-newest/$(BIN)/python -m pip freeze --exclude-editable > .ci/constraints.txt

clean:
	rm -rf .venv .venv-oldest .venv-newest build dist .pytest_cache .mypy_cache .ruff_cache \
	    .hypothesis .import_linter_cache .mutants
	find . -name __pycache__ -prune -exec rm -rf {} +
	find . -name .ipynb_checkpoints -prune -exec rm -rf {} +
