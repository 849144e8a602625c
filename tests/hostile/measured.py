"""Run a command from a small process of its own, so that the memory told is the command's and not that of the tests.

``python measured.py RESULT COMMAND ...`` writes exit code, seconds and most resident kilobytes to the file RESULT.
"""

from __future__ import annotations

import json
import resource
import subprocess
import sys
import time
from pathlib import Path

SECONDS_TO_GIVE_UP = 120
# More than a check may use: what goes beyond it is ended here, and does not take the machine with it.
ADDRESS_SPACE = 2_000_000_000
ENDED = -9


def run(result: Path, command: list[str]) -> None:
    """Run a command and write what it took."""
    resource.setrlimit(resource.RLIMIT_AS, (ADDRESS_SPACE, ADDRESS_SPACE))
    started = time.perf_counter()
    try:
        code = subprocess.run(command, stdin=subprocess.DEVNULL, timeout=SECONDS_TO_GIVE_UP, check=False).returncode
    except subprocess.TimeoutExpired:
        code = ENDED
    taken = {
        "code": code,
        "seconds": time.perf_counter() - started,
        "kilobytes": resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss,
    }
    result.write_text(json.dumps(taken), encoding="utf-8")


if __name__ == "__main__":
    run(Path(sys.argv[1]), sys.argv[2:])
