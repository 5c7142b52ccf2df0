# SPDX-License-Identifier: GPL-3.0-or-later
"""The program's window as the tests meet it: on a car of its own, by names people see.

Needs in the environment: STRUTWRIGHT and STRUTWRIGHT_WINDOW, the two programs, and
STRUTWRIGHT_DATADIR, the demo cars.
"""
import contextlib
import csv
import io
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import time
import unittest

from gtkdrive import App, Atspi, GLib, sh, wait_for

APP_ID = 'org.strutwright.Strutwright'
DATA = pathlib.Path(os.environ['STRUTWRIGHT_DATADIR'])
os.environ.setdefault('STRUTWRIGHT_TOUR', 'no')  # only the test of the tour wants it
# Under the address sanitizer test-window-parts.c looks for leaks, which takes slow stacks;
# here the program has to keep up with a person, so it looks for the other faults alone.
PROGRAM_ENV = {'G_DEBUG': 'fatal-warnings', 'ASAN_OPTIONS': 'detect_leaks=0'}
WREN = 'Wren 1.3 hill-climb hatch'
NUMBERS = 'Numbers at the travel in hand'
CURVES = 'Curves against wheel travel'
FRONT_MOUNT = 'Upper mount, front view'
SIDE_MOUNT = 'Upper mount, side view'
PLAN_MOUNT = 'Upper mount, plan view'
FRONT_WHEEL = 'Wheel travel, front view'
TRAVEL = 'Wheel travel in millimetres'
SETUPS = 'Setups'
HEIGHT_HANDLE = 'Ride height, front view'
LOWERING = 'Roll centre against lowering'


def command(*args):
    return subprocess.run([os.environ['STRUTWRIGHT'], *map(str, args)], text=True,
                          timeout=120, stdout=subprocess.PIPE, stderr=subprocess.PIPE)


def table_row(path, travel, setup=None):
    """What the command line prints for one travel, as numbers by column name."""
    args = ['table', path, '--from', travel, '--to', travel + 1, '--step', 1]
    if setup:
        args += ['--setup', setup]
    run = command(*args)
    assert run.returncode == 0, run.stderr
    row = next(csv.DictReader(io.StringIO(run.stdout)))
    return {name: float(value) for name, value in row.items()}


def shown_number(text):
    return float(text.replace('−', '-'))


class Window(App):
    """The window of one car, found by the names that a screen reader would speak."""

    last_focused = None
    frame = None  # of the window that is clicked, when it is not the main one

    def __init__(self, *args, title=WREN):
        super().__init__([os.environ['STRUTWRIGHT_WINDOW'], *map(str, args)], APP_ID,
                         title, env=PROGRAM_ENV)
        wait_for('the keys', lambda: self.active() == self.win)
        wait_for('the handles', lambda: self.box(self.handle(FRONT_MOUNT)).x > 0)

    @contextlib.contextmanager
    def inside(self, window, title):
        """Clicks go to another of the program's windows for a while."""
        self.win, main_window = window, self.win
        self.frame = self.get('frame', title)
        self.wait_laid_out()
        try:
            yield
        finally:
            self.win, self.frame = main_window, None

    def wait_laid_out(self):
        """Until the window keeps its place and size, so that a click meets its parts."""
        last = []

        def is_still():
            box = self.box(self.frame)
            now = sh('xwininfo', '-id', self.win), box.width, box.height
            last.append(now)
            time.sleep(0.1)
            return box.width > 0 and last[-3:] == [now] * 3
        wait_for('the parts of the window', is_still)

    def origin(self, win=None):
        if self.frame is None:
            return super().origin(win)
        width = int(re.search(r'Width: (\d+)', sh('xwininfo', '-id', self.win))[1])
        border = (width - self.box(self.frame).width) // 2
        return border, border

    def handle(self, name):
        return self.get('slider', name)

    def spin(self, name):
        return self.value(self.get('spin button', name))

    def mount(self):
        return tuple(self.spin(name) for name in ('Inboard', 'Rearward', 'Up'))

    def travel(self):
        return self.value(self.get('slider', TRAVEL))

    def is_enabled(self, action):
        return self._actions('Describe', GLib.Variant('(s)', (action,)))[0][0]

    def focused(self):
        """The widget that has the keys, looked for around the last one that had them."""
        try:
            start = self.last_focused or self.acc
            self.last_focused = next(filter(self.has_focus, self.around(start)), None)
        except GLib.Error:  # it went away
            self.last_focused = next(filter(self.has_focus, self.around(self.acc)), None)
        return self.last_focused

    def around(self, node):
        """That widget and what is in it, then the rest of what holds it, and so on."""
        seen = None
        while node:
            yield node
            for i in range(node.get_child_count()):
                child = node.get_child_at_index(i)
                if child and child != seen:
                    yield from self.walk(child, but_inside='table row')
            seen, node = node, node != self.acc and node.get_parent()

    def rows(self):
        """The rows of the list of setups, in its order."""
        setups = self.get('list', SETUPS)
        return [setups.get_child_at_index(i) for i in range(setups.get_child_count())]

    def setups(self):
        return [row.get_name() for row in self.rows()]

    def in_hand(self):
        for row in self.rows():
            if row.get_state_set().contains(Atspi.StateType.SELECTED):
                return row.get_name()
        return None

    def wait_setups(self, *names):
        try:
            wait_for('setups', lambda: self.setups() == list(names))
        except AssertionError:
            raise AssertionError('setups %s, not %s' % (self.setups(),
                                                        list(names))) from None

    def wait_in_hand(self, name):
        wait_for('%s in hand' % name, lambda: self.in_hand() == name)

    def pick(self, name):
        """Click a setup in the list, left of its buttons."""
        row = wait_for('setup ' + name, lambda: next(
            (row for row in self.rows() if row.get_name() == name), None))
        self.click(row, 50)
        self.wait_in_hand(name)

    def tab_to(self, role, name, key='Tab', most=60):
        """Tab until that control has the focus; each step is seen to be taken."""
        here = wait_for('a focus', self.focused)
        for _ in range(most):
            if here.get_role_name() == role and here.get_name() == name:
                return here
            self.key(key)
            wait_for('%s to leave %s %r' % (key, here.get_role_name(), here.get_name()),
                     lambda: not self.has_focus(here))
            here = wait_for('a focus', self.focused)
        raise AssertionError('%s never came to %s %r' % (key, role, name))

    @staticmethod
    def has_focus(node):
        return node.get_state_set().contains(Atspi.StateType.FOCUSED)

    def wait_mount(self, inboard, rearward=0.0, up=0.0):
        wanted = inboard, rearward, up
        try:
            wait_for('mount', lambda: self.mount() == wanted)
        except AssertionError:
            raise AssertionError('mount at %s, not %s' % (self.mount(), wanted)) from None

    def double_click(self, node, done, x=None):
        """Until done() holds: on a busy machine two clicks may come too far apart."""
        for _ in range(5):
            self.click(node(), x, repeat=2)
            try:
                return wait_for('what the double click does', done, timeout=6)
            except AssertionError:
                continue
        raise AssertionError('no double click was one')

    def rest_pointer(self):
        """Where nothing lights up: on the title bar."""
        sh('xdotool', 'mousemove', '--window', self.win, 300, 25)

    def moves(self, node, *places, button=1, before_release=()):
        """Press at the first place of the widget, go through the others, release."""
        points = [self.at(node, *place) for place in places]
        words = ['xdotool', 'mousemove', '--window', self.win, *points[0], 'sleep', 0.05,
                 'mousedown', button]
        for point in points[1:]:
            words += ['sleep', 0.03, 'mousemove', '--window', self.win, *point]
        words += ['sleep', 0.05]
        for key in before_release:
            words += ['key', key, 'sleep', 0.05]
        sh(*words, 'mouseup', button)

    def drag_handle(self, name, dx, dy, keep=()):
        """Drag a handle from its middle; returns nothing, ask the spin buttons."""
        box = self.box(self.handle(name))
        x, y = box.width / 2, box.height / 2
        self.moves(self.handle(name), (x, y), (x + dx / 2, y + dy / 2), (x + dx, y + dy),
                   before_release=keep)

    def read_number(self, quantity):
        """The row of the table that is lit, as the table tells it: (was, is, sentence)."""
        table = self.get('image', NUMBERS)
        self.click(table, 100, 30)
        self.rest_pointer()
        wait_for('a table with no row lit', lambda: self.has_focus(table)
                 and not table.get_description())
        text = ''
        for _ in range(40):
            before = text
            self.key('Down')
            try:
                text = wait_for('the next row', lambda: table.get_description() != before
                                and table.get_description(), timeout=4)
            except AssertionError:
                continue  # the pointer was seen to leave after all: it began again
            if text.startswith(quantity + ':'):
                break
        found = re.match(r'.*: .* (\S+), this setup (\S+) ', text)
        assert found and text.startswith(quantity + ':'), text
        return shown_number(found[1]), shown_number(found[2]), text

    def save(self, path):
        """Ctrl+S, and wait until the file holds what was not there before."""
        before = path.stat().st_mtime_ns
        self.key('ctrl+s')
        wait_for('the saved file', lambda: path.stat().st_mtime_ns != before)

    def active(self):
        """X id of the window that has the keys."""
        asked = subprocess.run(['xdotool', 'getactivewindow'], text=True, timeout=60,
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        return asked.stdout.strip()  # none while one window hands over to another

    def wait_other_window(self, *known):
        """The window that took the keys from ours and from those known.

        Asked of X: walking the accessible tree while GTK 4.8 opens or closes a dialog
        draws criticals out of it.
        """
        known = {self.win, *known}
        return wait_for('another window',
                        lambda: self.active() not in known and self.active())

    @staticmethod
    def is_gone(window):
        asked = subprocess.run(['xwininfo', '-id', window], text=True, timeout=60,
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        return 'IsViewable' not in asked.stdout

    def wait_gone(self, window, timeout=30):
        """Until it is gone and another has the keys, so that the next ones meet it."""
        wait_for('the dialog to go', lambda: self.is_gone(window), timeout)
        wait_for('the keys to go on', lambda: self.active() not in ('', window)
                 or self.proc.poll() is not None)

    def close_dialog(self, dialog):
        """By Escape, of which the first may come before the dialog has its keys, or meet a
        list in it that is being closed."""
        for _ in range(4):
            self.key('Escape')
            try:
                return self.wait_gone(dialog, timeout=4)
            except AssertionError:
                if self.is_gone(dialog):
                    return self.wait_gone(dialog)
        raise AssertionError('the dialog stays')

    def in_dialog(self, path, *known, location_key='ctrl+a'):
        """Give a file dialog a whole path and confirm; Ctrl+L where it has no name entry."""
        dialog = self.wait_other_window(*known)
        for _ in range(8):  # keys are lost while the dialog still looks for names
            self.key(location_key)
            self.type(str(path))
            time.sleep(0.3)
            self.key('Return')
            try:
                return self.wait_gone(dialog, timeout=5)
            except AssertionError:
                holder = self.active()
                if self.is_gone(dialog):  # since then: the machine is busy
                    return self.wait_gone(dialog)
                assert holder == dialog, 'the file dialog asks something'
        raise AssertionError('the file dialog stays')

    def message(self):
        """The sentence shown in place, or None."""
        dismiss = self.find('push button', 'Dismiss')
        if dismiss is None or self.box(dismiss.get_parent().get_parent()).height == 0:
            return None
        return dismiss.get_parent().get_child_at_index(0).get_name()


class WindowTest(unittest.TestCase):
    """Each test gets a folder with its own copy of the demo car."""

    def setUp(self):
        folder = tempfile.TemporaryDirectory(prefix='strutwright-')
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)
        self.car = self.folder / 'wren.swcar'
        shutil.copy(DATA / 'wren.swcar', self.car)
        state = tempfile.TemporaryDirectory(prefix='strutwright-')
        self.addCleanup(state.cleanup)
        os.environ['XDG_STATE_HOME'] = state.name  # what a test leaves is no other's

    def open(self, *args, **named):
        return self.keep(Window(*(args or (self.car,)), **named))

    def open_demo(self):
        return self.keep(Window())

    def keep(self, window):
        self.addCleanup(self.close, window)
        return window

    def close(self, window):
        window.__exit__(None)


def main():
    unittest.main(warnings='ignore')
