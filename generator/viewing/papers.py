"""Handouts while one writes: sizes that are looked at come in, their sheets are set in a process beside this one.

The size that was looked at last comes first, then the other sizes of its project. A file that is saved makes all of
them wait to be set anew; what is being set then is set to the end and thrown away.
"""

from __future__ import annotations

import pickle
import time
from contextlib import suppress
from pathlib import Path
from threading import Condition, Thread

from generator.errors import TuckwrightError
from generator.publishing.jobs import Outcome, RoomVersion, Stamp
from generator.publishing.make.sheets import make_handouts
from generator.publishing.pool import Pool
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output, not_read
from generator.rendering.handout.pictures import Drawer
from generator.viewing.room_now import RoomNow, Sheet

_MOST_SECONDS = 200
"""How long a browser waits for a sheet: a little longer than a sheet may take."""
_LONGEST_END = 2.0
"""How long [s] the end waits: workers that are only being loaded then end by themselves when this process has."""
# With one at most a pool works in this process, where pages are made meanwhile.
_WORKERS = 2


def make_packed(room: OpenRoom, output: Output, packed: bytes) -> None:
    """Write the handouts of a packed worksheet; they bear no mark, for nobody has been given them."""
    worksheet = pickle.loads(packed)  # noqa: S301 -- packed by this program a moment ago
    make_handouts(room, output, worksheet, Stamp("", "draft"), Drawer(worksheet, room.style))


class Papers:
    """The handouts of a room that somebody is writing, each set once for every state of its files."""

    def __init__(self, now: RoomNow) -> None:
        self._now = now
        self._changed = Condition()
        self._waiting: list[Sheet] = []
        self._done: dict[Sheet, str] = {}
        """What became of each size: nothing to say where its sheets are there, else why they are not."""
        self._pool: Pool | None = None
        self._state = 0
        self._closed = False
        self._thread = Thread(target=self._work, daemon=True)
        self._thread.start()

    def forget(self) -> None:
        """Throw away what was set: a file was saved."""
        with self._changed:
            self._state += 1
            self._done.clear()
            self._waiting.clear()
            self._changed.notify_all()

    def want(self, sheet: Sheet) -> None:
        """Set the handouts of a size first, and then those of the other sizes of its project."""
        with self._changed:
            others = [other for other in self._now.sheets(sheet.project) if other != sheet]
            wanted = [sheet, *others, *(other for other in self._waiting if other.project != sheet.project)]
            self._waiting = [one for one in wanted if one not in self._done]
            self._changed.notify_all()

    def file(self, sheet: Sheet, address: str) -> Path:
        """Return the file of a handout, as soon as it is there; what is saved meanwhile is in it.

        Raises
        ------
        TuckwrightError
            If it could not be set.
        """
        end = time.monotonic() + _MOST_SECONDS
        fault: str | None = None
        while fault is None and time.monotonic() < end and not self._closed:
            self.want(sheet)
            with self._changed:
                state = self._state
                self._changed.wait_for(
                    lambda state=state: sheet in self._done or state != self._state or self._closed,  # type: ignore[misc]
                    end - time.monotonic(),
                )
                fault = self._done.get(sheet)
        if fault != "":
            raise TuckwrightError(fault or "the sheet was not ready in time; ask for it again")
        return self._now.out / address

    def close(self) -> None:
        """Set nothing more."""
        with self._changed:
            self._closed = True
            self._changed.notify_all()
            if self._pool is not None:
                self._pool.stop()
        self._thread.join(_LONGEST_END)

    def _work(self) -> None:
        version: RoomVersion | None = None
        while (found := self._next()) is not None:
            state, sheet = found
            try:
                newest, job = self._now.handout_job(sheet)
                if newest != version or self._pool is None:
                    version = newest
                    self._leave_pool()
                    self._pool = Pool(version, self._now.out, _WORKERS, beside=self._now.out)
                if self._closed:
                    # The end was told while there was no pool to stop.
                    break
                ((_, outcome),) = self._pool.outcomes([job])
            except EOFError:
                # What splits off workers has gone: the next one begins anew.
                self._leave_pool()
                self._tell(state, sheet, "no process to set it could be started; save again")
            except OSError as fault:
                self._tell(state, sheet, not_read(fault, self._now.folder))
            except TuckwrightError as fault:
                self._tell(state, sheet, str(fault))
            else:
                self._tell(state, sheet, _fault(outcome))
        self._leave_pool()

    def _next(self) -> tuple[int, Sheet] | None:
        """Wait for the size that is set next; None at the end."""
        with self._changed:
            self._changed.wait_for(lambda: self._waiting or self._closed)
            return None if self._closed else (self._state, self._waiting.pop(0))

    def _tell(self, state: int, sheet: Sheet, fault: str) -> None:
        with self._changed:
            if state == self._state:
                self._done[sheet] = fault
                self._changed.notify_all()

    def _leave_pool(self) -> None:
        if self._pool is not None:
            with suppress(OSError, EOFError):
                self._pool.__exit__(None, None, None)
            self._pool = None


def _fault(outcome: Outcome) -> str:
    return outcome.fault or "\n".join(map(str, outcome.findings))
