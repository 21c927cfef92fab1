# Everything runs in .venv, which each target sets up by itself: Python 3.11, make and pip are enough.

PYTHON ?= python3
BIN := .venv/bin
STAMP := .venv/.installed
export OPENBLAS_NUM_THREADS := 1

.PHONY: demo desk test check bench format clean

demo: $(STAMP)
	$(BIN)/chairwright demo --out out/demo

desk: $(STAMP)
	$(BIN)/chairwright desk

test: $(STAMP)
	$(BIN)/pytest -q -n 2

check: $(STAMP)
	$(BIN)/ruff check src tests
	$(BIN)/ruff format --check src tests
	$(BIN)/mypy
	$(BIN)/lint-imports --no-logo

bench: $(STAMP)
	$(BIN)/python -m tests.bench.run

format: $(STAMP)
	$(BIN)/ruff check --fix src tests
	$(BIN)/ruff format src tests

clean:
	rm -rf .venv out build dist .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache

$(STAMP): pyproject.toml constraints.txt
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' \
		|| { echo "chairwright needs Python 3.11 or later; name it with: make $(MAKECMDGOALS) PYTHON=python3.11"; exit 1; }
	$(PYTHON) -m venv .venv
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[desk,test]' -c constraints.txt
	$(BIN)/python -m compileall -q src
	@touch $@
