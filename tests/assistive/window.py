# SPDX-License-Identifier: GPL-3.0-or-later
"""The window as assistive technology has it: a tree of names, roles, states and values, and keys to what has focus."""

import subprocess
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

State = Atspi.StateType
KEYS = {"Tab": 0xFF09, "Return": 0xFF0D, "Home": 0xFF50, "Left": 0xFF51, "Up": 0xFF52, "Right": 0xFF53,
        "Down": 0xFF54, "End": 0xFF57, "Escape": 0xFF1B, "F1": 0xFFBE, "F6": 0xFFC3}
# Keeping their children to themselves: a table may have thousands.
DEEP = {"table", "tree table"}


class Missing(Exception):
    """What was looked for did not come."""


def has(thing, state):
    return thing.get_state_set().contains(state)


def describe(thing):
    return f"{thing.get_role_name()} '{thing.get_name()}'"


def text_of(thing):
    text = thing.get_text_iface()
    return Atspi.Text.get_text(text, 0, Atspi.Text.get_character_count(text)) if text else None


def select_all(thing):
    text = thing.get_text_iface()
    Atspi.Text.add_selection(text, 0, Atspi.Text.get_character_count(text))


def enter(thing, words):
    """Puts words there without a key, as dictation does."""
    Atspi.EditableText.set_text_contents(thing.get_editable_text_iface(), words)


def value_of(thing):
    value = thing.get_value_iface()
    return Atspi.Value.get_current_value(value) if value else None


def label_of(thing):
    """Its own name, and what the tree says labels it."""
    names = [thing.get_name()]
    for relation in thing.get_relation_set():
        if relation.get_relation_type() == Atspi.RelationType.LABELLED_BY:
            names += [relation.get_target(i).get_name() for i in range(relation.get_n_targets())]
    return " ".join(name for name in names if name)


def walk(thing, deep=False):
    """Everything that is shown, parents first."""
    yield thing
    if thing.get_role_name() in DEEP and not deep:
        return
    for i in range(thing.get_child_count()):
        child = thing.get_child_at_index(i)
        if child is not None and has(child, State.SHOWING):
            yield from walk(child, deep)


class Window:
    """One running program."""

    def __init__(self, name, process):
        self.process = process
        self.heard = []
        self.listener = Atspi.EventListener.new(self._hear)
        for kind in ("object:state-changed:focused", "object:property-change:accessible-value",
                     "object:property-change:accessible-name"):
            self.listener.register(kind)
        self.app = self.until(lambda: self._application(name), f"the program {name} on the accessibility bus")
        self.app.set_cache_mask(Atspi.Cache.NONE)  # what is asked is what is there
        self.frame = self.until(lambda: next((child for child in self._children() if has(child, State.SHOWING)), None),
                                "its window")

    def _hear(self, event):
        self.heard.append((event.type, event.detail1, event.source))

    def _application(self, name):
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            app = desktop.get_child_at_index(i)
            if app is not None and app.get_name() == name and app.get_child_count():
                return app
        return None

    def _children(self):
        return [self.app.get_child_at_index(i) for i in range(self.app.get_child_count())]

    def until(self, answer, what, seconds=15):
        """Waits for an answer that is neither None nor False."""
        end = time.monotonic() + seconds
        while True:
            while GLib.MainContext.default().iteration(False):
                pass
            if self.process.poll() is not None:
                raise Missing(f"the program ended with {self.process.returncode}")
            try:
                found = answer()
            except GLib.Error:  # the thing asked went away meanwhile
                found = None
            if found is not None and found is not False:
                return found
            if time.monotonic() > end:
                raise Missing(f"no {what} within {seconds} s")
            time.sleep(0.01)

    def all(self, role, fits=lambda name: True):
        return [each for each in walk(self.frame) if each.get_role_name() == role and fits(each.get_name())]

    def find(self, role, name, starts=False, seconds=15):
        """The first that is shown with this role and name."""
        fits = (lambda has_name: has_name.startswith(name)) if starts else (lambda has_name: has_name == name)
        return self.until(lambda: next(iter(self.all(role, fits)), None), f"{role} '{name}'", seconds)

    def find_any(self, name):
        """The first that is shown with this name, whatever it is."""
        return self.until(lambda: next((each for each in walk(self.frame) if each.get_name() == name), None), name)

    def names(self, role):
        return [each.get_name() for each in self.all(role)]

    def act(self, thing, name):
        """What the thing offers under this name; a button that is off for now offers nothing."""
        def place():
            action = thing.get_action_iface()
            known = [Atspi.Action.get_action_name(action, i) for i in range(Atspi.Action.get_n_actions(action))]
            return known.index(name) if name in known else None
        Atspi.Action.do_action(thing.get_action_iface(), self.until(place, f"action {name} of {describe(thing)}", 25))

    def press(self, role, name, starts=False):
        self.act(self.find(role, name, starts), "Press")

    def chord(self, keys):
        """Keys held together, as xdotool names them."""
        subprocess.run(["xdotool", "key", keys], check=True, stdout=subprocess.DEVNULL, timeout=20)

    def windows(self):
        """The windows shown beside the main one: dialogs and open menus."""
        return [child for child in self._children() if child is not None and child != self.frame
                and has(child, State.SHOWING)]

    def bring(self, title):
        """Gives a window the keys, as a window manager does for a new one; the bare display has none."""
        subprocess.run(["xdotool", "search", "--sync", "--onlyvisible", "--name", title, "windowfocus"],
                       check=True, stdout=subprocess.DEVNULL, timeout=20)

    def activate(self):
        """Back to the main window."""
        self.bring("Staveline$")
        self.until(lambda: has(self.frame, State.ACTIVE), "active window")

    def focus(self, thing):
        Atspi.Component.grab_focus(thing.get_component_iface())
        self.until(lambda: has(thing, State.FOCUSED), f"focus on {describe(thing)}")
        return thing

    def key(self, name):
        """A real key event to whatever has the focus."""
        Atspi.generate_keyboard_event(KEYS.get(name) or ord(name), None, Atspi.KeySynthType.SYM)

    def type(self, characters):
        for character in characters:
            self.key(character)

    def focus_heard(self, role, name, what):
        """Does `what` and waits for the announcement that this got the focus."""
        self.heard.clear()
        what()

        def announced():
            return next((source for kind, on, source in self.heard if kind == "object:state-changed:focused" and on
                         and source.get_role_name() == role and source.get_name() == name), None)
        return self.until(announced, f"announced focus on {role} '{name}'")
