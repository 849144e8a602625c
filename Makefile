# Two commands do everything on a fresh machine: `make site` and `make test`.
PYTHON ?= python3
BIN := .venv/bin
# Homebrew keeps Pango where the system's loader does not look by itself.
ifeq ($(shell uname -s),Darwin)
export DYLD_FALLBACK_LIBRARY_PATH := /opt/homebrew/lib:/usr/local/lib
endif

# The tests start hundreds of processes; with compiled files kept, each of them begins in a third of the time.
unexport PYTHONDONTWRITEBYTECODE

.PHONY: site check test benchmark lock clean help

help:
	@echo "make site       build the site and all sheets of the demo room into site/public"
	@echo "make check      run the quick checks: style, types, the sums, the reading of files; in a minute, for work in between"
	@echo "make test       run every check: style, types, tests; the whole built site among them"
	@echo "make benchmark  measure how long publishing takes, as ratios"
	@echo "make lock       write the lock file again after a change of pyproject.toml"
	@echo "make clean      remove what was built, the environment included"

site: .venv/ready
	@.ci/system-libraries pango
	$(BIN)/tuckwright publish

check: .venv/ready
	$(BIN)/ruff format --check
	$(BIN)/ruff check
	$(BIN)/mypy
	$(BIN)/pytest -n 2 --dist worksteal tests/calculation tests/cases tests/definitions tests/house \
		--ignore tests/house/test_guides_told.py --ignore tests/calculation/test_layouts_by_solver.py

test: .venv/ready
	@.ci/system-libraries pango browser
	$(BIN)/ruff format --check
	$(BIN)/ruff check
	$(BIN)/mypy
	$(BIN)/tuckwright publish
	$(BIN)/pytest -n 2 --dist worksteal

benchmark: .venv/ready
	@.ci/system-libraries pango
	$(BIN)/python -m tests.benchmarks.publish

lock: .venv/ready
	$(BIN)/pip install --quiet uv
	$(BIN)/uv pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-emit-index-url \
		--no-annotate --no-header --extra test pyproject.toml --output-file requirements.lock

.venv/ready: requirements.lock pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "Python 3.11 or newer is needed; name it with: make PYTHON=python3.12 $(MAKECMDGOALS)"; exit 1; }
	@$(PYTHON) -m venv .venv || { echo "Python cannot make an environment; on Debian: apt-get install python3-venv"; exit 1; }
	$(BIN)/pip install --quiet --disable-pip-version-check --require-hashes --requirement requirements.lock
	$(BIN)/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	@touch .venv/ready

clean:
	rm -rf .venv .tuckwright site/public
