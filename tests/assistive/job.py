# SPDX-License-Identifier: GPL-3.0-or-later
"""A brewer's whole job through AT-SPI alone; each step is checked in the tree and in the book.

    job.py PROGRAM SCRATCH    run by tests/assistive/run
"""

import re
import subprocess
import sys
import time
from collections import Counter

from book import TODAY, Book
from window import Atspi, Missing, State, Window, describe, enter, has, label_of, select_all, text_of, value_of, walk

VESSEL = "Plover"
# What a brewer acts on or reads as a picture: without a name it cannot be told from the next one.
NAMED = {"push button", "check box", "radio button", "slider", "text", "combo box", "page tab", "table", "list",
         "chart", "form", "list item", "menu item", "document frame"}


class Wrong(Exception):
    """What was found is not what should be there."""


def check(truth, words):
    if not truth:
        raise Wrong(words)


class Job:
    def __init__(self, window, book):
        self.window, self.book = window, book
        self.seen, self.nameless, self.unknown = Counter(), [], []

    def look(self, place):
        """Counts what is shown at a place."""
        for thing in walk(self.window.frame):
            role = thing.get_role_name()
            self.seen[role] += 1
            if role in ("unknown", "invalid"):
                self.unknown.append(f"{place}: {describe(thing)}")
            acts = role in NAMED or has(thing, State.FOCUSABLE)
            if acts and not label_of(thing).strip():
                self.nameless.append(f"{place}: {describe(thing)}")

    def go_to(self, page):
        self.window.press("page tab", page)
        self.window.find("page tab list", page)

    def said(self, pattern, role="label"):
        """Waits until something is shown whose name fits."""
        fits = re.compile(pattern)
        return self.window.until(lambda: next(iter(self.window.all(role, fits.search)), None),
                                 f"{role} /{pattern}/", 25)

    def stored(self, pattern):
        """Waits until the last edit in the book is worded like this."""
        def words():
            last = self.book.last_edit()
            return last if re.search(pattern, last) else None
        return self.window.until(words, f"edit /{pattern}/ in the book (last: {self.book.last_edit()})")

    # The steps; each returns what it found, in a few words.

    def opened(self):
        """The first focus is in the table of all vessels; Enter leads to the work that is due there, a tasting, not to a
        button that takes something back."""
        self.window.activate()
        self.window.find("table", "All vessels")
        self.look("All vessels")
        self.window.key("Return")
        cell = self.window.until(lambda: next((each for each in self.window.all("text")
                                               if has(each, State.FOCUSED)), None), "focus on a score")
        self.look("Taste")
        self.go_to("Draw & refill")
        return f"'{self.window.frame.get_name()}', focus on {cell.get_name()}"

    def rail(self):
        rail = self.window.find("list", "Cellar")
        told = [item.get_name() for item in walk(rail) if item.get_role_name() == "list item"]
        wanted = [f"{each['vessel']}, {each['headline']}" for each in self.book.status()]
        check(told == wanted, f"the rail says {told}, the book {wanted}")
        self.window.focus_heard("list", "Cellar", lambda: self.window.key("F6"))
        self.window.focus_heard("list item", told[1], lambda: self.window.key("Down"))
        second = wanted[1].split(",")[0]
        self.window.until(lambda: self.window.frame.get_name().startswith(second), f"window of {second}")
        self.window.focus_heard("list item", told[0], lambda: self.window.key("Up"))
        self.window.until(lambda: self.window.frame.get_name().startswith(VESSEL), f"window of {VESSEL}")
        return "; ".join(told)

    def taste(self):
        """Two scores; Tab goes down the glass in hand. Nothing but what has the focus is announced as having it."""
        self.go_to("Taste")
        first = self.window.focus(self.window.find("text", "sourness at its peak, cold"))
        check("not scored" in first.get_description(), f"an empty score says '{first.get_description()}'")
        check(not self.sitting(), f"the book has a tasting of today already: {self.sitting()}")
        self.window.type("6")
        second = self.window.focus_heard("text", "how long the sourness lasts, cold", lambda: self.window.key("Tab"))
        astray = [describe(source) for kind, on, source in self.window.heard
                  if kind == "object:state-changed:focused" and on and source.get_role_name() != "text"]
        check(not astray, f"announced with the focus elsewhere: {astray}")
        self.window.type("5,5")
        self.window.key("Tab")
        self.said("^Scored 2 of the 12 lines that count$")
        self.window.until(lambda: text_of(second) == "5.5", "the score 5.5 in its field")
        check(text_of(first) == "6.0", f"the first field holds '{text_of(first)}'")
        check("not scored" not in first.get_description(), f"a score says '{first.get_description()}'")
        words = self.stored("score for how long the sourness lasts")
        check(self.sitting(), "no tasting of today in the book")
        self.look("Taste")
        return f"6 and 5.5, '{first.get_description()}'; {words}"

    def sheet_says(self):
        """Scores enough for a word on acidity; the sheet answers at once."""
        for line in ("sourness at its peak", "how long the sourness lasts", "hard edge of the sourness",
                     "yoghurt, whey"):
            for glass, score in (("cold", "6"), ("cellar", "6.5")):
                self.window.focus(self.window.find("text", f"{line}, {glass}"))
                self.window.type(score)
                self.window.key("Tab")
        self.said("^Scored 4 of the 12 lines that count$")
        self.window.find("label", "Acidity")
        told = self.said("^Acidity: .*±").get_name()
        check(self.sitting()["acidity"], f"the book has no acidity in {self.sitting()}")
        return f"'{told}', in the book {float(self.sitting()['acidity']):.1f}"

    def sitting(self):
        """Today's tasting as the book has it."""
        return next((row for row in self.book.history(VESSEL) if row["on"] == TODAY and row["what"] == "sitting"), None)

    def choose(self):
        """A choice opens, its entries are announced, and it says what was taken."""
        choice = self.window.find("combo box", "Draw it?, not decided")
        self.window.act(choice, "ShowMenu")
        self.window.until(lambda: has(choice, State.EXPANDED), "open choice")
        self.window.focus_heard("list item", "yes", lambda: self.window.key("Down"))
        self.window.key("Return")
        self.window.until(lambda: choice.get_name() == "Draw it?, yes", "what was taken in the name of the choice")
        return self.stored("draw it")

    def adjust(self):
        self.go_to("Adjust")
        self.said("too sour|too flat|inside|hold")
        verdicts = [self.window.find("chart", f"{part} over time").get_description()
                    for part in ("Acidity", "Funk", "Body")]
        check(all("tasted" in each and "target" in each for each in verdicts), f"the charts say {verdicts}")
        self.window.find("radio button", "Leave it alone", seconds=25)
        self.look("Adjust")
        return verdicts[0]

    def try_lever(self):
        """A slider tells its value in the unit shown, and says when it moves."""
        slider = self.window.focus(self.window.find("slider", "Bitterness of the refill"))
        before = value_of(slider)
        self.window.heard.clear()
        self.window.key("Right")
        self.window.until(lambda: value_of(slider) > before, "higher value of the slider")
        self.window.until(lambda: any("accessible-value" in kind for kind, _, _ in self.window.heard),
                          "announced value")
        number = self.window.find("text", "Bitterness of the refill, number in IBU")
        check(float(text_of(number)) == value_of(slider), f"{value_of(slider)} beside {text_of(number)}")
        check("IBU" in slider.get_description(), f"the slider says '{slider.get_description()}'")
        self.said("at the next draw: acidity .*±")
        return f"from {before:g} to {slider.get_description()}"

    def lock(self):
        self.window.press("push button", "Reset")
        lock = self.window.find("check box", "Lock bitterness of the refill")
        self.window.act(lock, "Toggle")
        self.window.until(lambda: has(lock, State.CHECKED), "checked lock")
        words = self.stored(f"lock for {VESSEL}")
        slider = self.window.find("slider", "Bitterness of the refill")
        self.window.until(lambda: not has(slider, State.SENSITIVE), "slider that is held")
        return words

    def adopt(self):
        self.window.until(lambda: not self.window.all("label", lambda name: name.startswith("Working it out")),
                          "end of the advice's work", 25)
        alone = self.window.find("radio button", "Leave it alone")
        self.window.act(alone, "Toggle")
        self.window.until(lambda: has(alone, State.CHECKED), "chosen proposal")
        check("at the next draw" in alone.get_description(), f"it says '{alone.get_description()}'")
        self.window.press("push button", "Adopt")
        self.stored(f"choice for {VESSEL}")
        return self.said("^Decision of 1 Jun 2026: no change").get_name()

    def brew(self):
        self.go_to("Brew")
        before = self.book.sheet(VESSEL)
        field = self.window.focus(self.window.find("text", "Original gravity in SG"))
        select_all(field)
        self.window.type("1,052")
        self.window.key("Return")
        self.window.until(lambda: text_of(field) == "1.052", "1.052 in the field")
        self.said(" L at 1.052$")
        self.window.until(lambda: self.book.sheet(VESSEL) != before, "changed brew sheet in the book")
        check("1.052" in self.book.sheet(VESSEL), "the sheet does not say 1.052")
        self.look("Brew")
        for part in ("Brew sheet", "As brewed", "Plan"):
            button = self.window.find("radio button", part)
            self.window.act(button, "Toggle")
            self.window.until(lambda: has(button, State.CHECKED), part)
            self.look(part)
        return self.book.last_edit()

    def draw(self):
        self.go_to("Draw & refill")
        before = self.book.vessel(VESSEL)["volume_l"]
        self.window.focus_heard("text", "Drawn in L", lambda: self.window.press("push button", "Draw-off"))
        self.window.type("60")
        enter(self.window.find("text", "Name of the drawn beer"), "Gravel Lane")
        self.said("L → .* L$")
        self.look("entry")
        self.window.key("Return")
        self.window.until(lambda: abs(self.book.vessel(VESSEL)["volume_l"] - (before - 60)) < 1e-6, "60 L less")
        table, entry = self.window.find("table", "Ledger"), "60.0 L drawn for Gravel Lane"
        names = self.window.until(lambda: self.row(table, 0) if entry in self.row(table, 0).values() else None,
                                  "the draw in the ledger")
        check(names["Date"] == "1 Jun 2026", f"the ledger says {names}")
        check(names["Level after"] == f"{before - 60:.1f} L", f"the ledger says {names}")
        return str(names)

    def row(self, table, number):
        """A row of a table as it is read out: each cell under the name of its column."""
        cells = {}
        for column in range(Atspi.Table.get_n_columns(table)):
            header = Atspi.Table.get_column_header(table, column).get_name()
            cells[header] = Atspi.Table.get_accessible_at(table, number, column).get_name()
        return cells

    def history(self):
        self.go_to("History")
        chart = self.window.focus(self.window.find("chart", f"Charts of {VESSEL}"))
        self.window.until(lambda: "60.0 L drawn" in chart.get_description(), "the draw at the cursor")
        self.window.key("Home")
        self.window.until(lambda: chart.get_description().startswith("15 Sep 2020"), "the first day at the cursor")
        self.window.key("End")
        self.window.until(lambda: chart.get_description().startswith(("1 Jun 2026", "4 Jul 2026", "1 Mar 2027")),
                          "the last day at the cursor")
        volume = self.window.find("chart", "Volume").get_description()
        level = self.book.vessel(VESSEL)["volume_l"]
        check(f"now {level:.1f} L" in volume, f"the chart says '{volume}'")
        self.look("History")
        self.window.key("t")
        table = self.window.find("table", "History as a table")
        self.window.until(lambda: has(table, State.FOCUSED), "focus on the table")
        rows = self.book.history(VESSEL)
        told = Atspi.Table.get_n_rows(table)
        check(told == len(rows), f"{told} rows, the book has {len(rows)}")
        first = self.row(table, 0)
        check(first["Date"] == "15 Sep 2020" and first["Entry"] == "Takeover", f"the table says {first}")
        self.look("History as a table")
        return volume

    def menus(self):
        """Every menu opens by its own action, its entries have names, and Escape leaves it."""
        told = {}
        for title in self.titles():
            self.window.act(title, "ShowMenu")
            entries = self.window.until(lambda title=title: self.entries(title), f"entries of {describe(title)}")
            nameless = [entry for entry in entries if not entry.get_name().strip()]
            check(not nameless, f"{describe(title)} has entries without a name")
            told[title.get_name()] = len(entries)
            self.close_menus()
        check(len(told) == 7 and min(told.values()) >= 2, f"the menus are {told}")
        return str(told)

    def entries(self, title):
        """What an open menu offers; dividing lines are no entries."""
        below = [title.get_child_at_index(i) for i in range(title.get_child_count())]
        return [thing for child in below if child is not None and has(child, State.SHOWING) for thing in walk(child)
                if thing.get_role_name() in ("menu item", "check menu item", "radio menu item")]

    def titles(self):
        frame = self.window.frame
        bar = next(child for child in (frame.get_child_at_index(i) for i in range(frame.get_child_count()))
                   if child.get_role_name() == "menu bar")
        return [bar.get_child_at_index(i) for i in range(bar.get_child_count())]

    def entry(self, title, name):
        return self.window.until(
            lambda: next((each for each in self.entries(title) if each.get_name() == name), None), f"entry '{name}'")

    def close_menus(self):
        for _ in range(4):
            if not any(self.entries(title) for title in self.titles()):
                return
            self.window.key("Escape")
            time.sleep(0.2)

    def choose_unit(self, name):
        view = next(title for title in self.titles() if title.get_name() == "View")
        self.window.act(view, "ShowMenu")
        units = self.entry(view, "Units")
        self.window.act(units, "ShowMenu")
        self.window.act(self.entry(units, name), "Press")
        self.close_menus()

    def units(self):
        """Another unit of volume from the View menu: labels say it at once, the book does not change."""
        before = self.book.content()
        self.choose_unit("US gallons")
        kind = self.said(r"^59\.4 US gal").get_name()
        self.go_to("Draw & refill")
        self.said("US gal")
        self.choose_unit("Litres")
        self.said(r"^225 L|^225\.0 L")
        check(self.book.content() == before, "the book changed with the units")
        return f"'{kind}' and back"

    def help(self):
        """F1 opens the help of the page, with the focus on its text; Escape leaves it."""
        self.window.key("F1")
        text = self.window.find_any("Help text")
        self.window.until(lambda: has(text, State.FOCUSED), "focus on the help")
        words = text_of(text) or ""
        check("Ctrl+D" in words, f"the help names no keys: '{words[:80]}'")
        self.look("Help")
        self.window.key("Escape")
        self.window.until(lambda: not has(text, State.SHOWING), "closed help")
        return f"{len(words)} characters"

    def dialogs(self):
        """Printing and saving ask in dialogs that Escape leaves; nothing is written."""
        before = self.book.content()
        self.window.chord("ctrl+shift+b")
        told = []
        for keys in ("ctrl+p", "ctrl+shift+p", "ctrl+o"):
            self.window.chord(keys)
            dialog = self.window.until(lambda: next(iter(self.window.windows()), None), f"dialog of {keys}", 25)
            told.append(dialog.get_name())
            check(dialog.get_name().strip(), f"the dialog of {keys} has no title")
            self.window.bring(f"^{re.escape(dialog.get_name())}$")
            self.window.chord("Escape")
            self.window.until(lambda: not self.window.windows(), f"closed dialog of {keys}")
            self.window.activate()
        check(self.book.content() == before, "a dialog that was left changed the book")
        self.go_to("Draw & refill")
        return ", ".join(told)

    def add_vessel(self):
        """A vessel through its page: named, sized, recorded, in the rail."""
        self.window.chord("ctrl+shift+n")
        name = self.window.find("text", "Name")
        self.window.until(lambda: has(name, State.FOCUSED), "focus on the name")
        self.window.type("Godwit")
        capacity = self.window.focus(self.window.find("text", "Capacity in L"))
        select_all(capacity)
        self.window.type("60")
        self.look("new vessel")
        self.window.press("push button", "Add the vessel")
        self.stored("add vessel Godwit")
        check(self.book.vessel("Godwit")["capacity_l"] == 60, "the book has another capacity")
        self.window.until(lambda: self.window.frame.get_name().startswith("Godwit"), "window of Godwit")
        self.window.key("Escape")  # its opening was in hand
        return self.window.until(lambda: next((each.get_name() for each in self.window.all("list item")
                                               if each.get_name().startswith("Godwit")), None), "Godwit in the rail")

    def undo(self):
        """All the way back, each step by its name."""
        steps = 0
        while (name := self.undo_button().get_name()) != self.made:
            check(steps < 40, "undo does not come to an end")
            check(name.startswith("Undo: "), f"undo does not say what: '{name}'")
            before = self.book.content()
            self.window.act(self.undo_button(), "Press")
            self.window.until(lambda: self.book.content() != before, f"book changed by '{name}'")
            steps += 1
        check(steps > 13, f"only {steps} edits to take back")
        check(self.book.whole() == self.start, "the book is not what it was")
        return f"{steps} edits taken back, the book is what it was"

    def undo_button(self):
        return self.window.until(
            lambda: next(iter(self.window.all("push button", lambda name: name.startswith("Undo"))), None), "undo")

    def all_named(self):
        check(not self.nameless, f"without a name: {sorted(set(self.nameless))}")
        check(not self.unknown, f"with an unknown role: {sorted(set(self.unknown))}")
        return "every control and picture has a name and a role"

    steps = (opened, rail, taste, sheet_says, choose, adjust, try_lever, lock, adopt, brew, draw, history, menus, units,
             help, dialogs, add_vessel, undo, all_named)

    def run(self):
        self.start = self.book.whole()
        self.made = self.undo_button().get_name()  # the sample cellar itself could be taken back too
        done = 0
        for step in self.steps:
            began = time.monotonic()
            try:
                found = step(self)
            except (Missing, Wrong) as fault:
                print(f"FAILED {step.__name__}: {fault}")
                break
            done += 1
            print(f"ok {step.__name__} ({time.monotonic() - began:.1f} s): {found}", flush=True)
        print(f"{done} of {len(self.steps)} steps; widgets seen {sum(self.seen.values())} in {len(self.seen)} roles, "
              f"without a name {len(self.nameless)}, with an unknown role {len(self.unknown)}")
        return done == len(self.steps)


def main(program, scratch):
    book = Book(program, f"{scratch}/cellar.cellar")
    book.ask("new", "--sample")
    with open(f"{scratch}/window.log", "wb") as log:
        process = subprocess.Popen([program, "--today", TODAY, "open", book.path], stdout=log, stderr=log)
    try:
        return Job(Window("Staveline", process), book).run()
    except Missing as fault:
        print(f"FAILED to begin: {fault}")
        return False
    finally:
        process.terminate()
        try:
            process.wait(10)
        except subprocess.TimeoutExpired:
            process.kill()
        with open(f"{scratch}/window.log", encoding="utf-8", errors="replace") as log:
            sys.stdout.write(log.read())


if __name__ == "__main__":
    sys.exit(0 if main(*sys.argv[1:]) else 1)
