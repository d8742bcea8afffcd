# SPDX-License-Identifier: GPL-3.0-or-later
"""The same book as the command line tells it: what the window did must be there."""

import csv
import io
import json
import sqlite3
import subprocess
from contextlib import closing

TODAY = "2026-06-01"


class Book:
    def __init__(self, program, path):
        self.program, self.path = program, path

    def ask(self, command, *more, path=None):
        done = subprocess.run([self.program, "--today", TODAY, command, path or self.path, *more], check=True,
                              capture_output=True, text=True, timeout=60)
        return done.stdout

    def status(self):
        return json.loads(self.ask("status", "--json"))

    def vessel(self, name):
        return next(vessel for vessel in self.status() if vessel["vessel"] == name)

    def history(self, name):
        return list(csv.DictReader(io.StringIO(self.ask("history", "--vessel", name, "--csv"))))

    def sheet(self, name):
        out = self.path + ".csv"
        self.ask("sheet", "--vessel", name, "--out", out)
        with open(out, encoding="utf-8") as file:
            return file.read()

    def last_edit(self):
        """What undo would take back, asked of a copy."""
        copy = self.path + ".copy"
        # Through the file format's own reader: the window may be writing just now.
        with closing(sqlite3.connect(f"file:{self.path}?mode=ro", uri=True)) as book, \
                closing(sqlite3.connect(copy)) as to:
            book.backup(to)
        return self.ask("undo", path=copy).strip()

    def content(self):
        with open(self.path, "rb") as file:
            return file.read()

    def whole(self):
        """Everything the command line tells of every vessel."""
        vessels = self.status()
        return [vessels, [[self.history(v["vessel"]), self.sheet(v["vessel"])] for v in vessels]]
