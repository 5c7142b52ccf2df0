# SPDX-License-Identifier: GPL-3.0-or-later
"""Tests of a dialog with entries: found by name, reached by Tab, told what is wrong."""
import os
import pathlib
import re
import tempfile

from gtkdrive import Atspi, wait_for
from strutwright_window import WindowTest


class FormTest(WindowTest):
    """Each test gets a data folder of its own as well."""

    def setUp(self):
        super().setUp()
        data = tempfile.TemporaryDirectory(prefix='strutwright-')
        self.addCleanup(data.cleanup)
        os.environ['XDG_DATA_HOME'] = data.name
        self.data = pathlib.Path(data.name)

    def dialog(self, window, title):
        """X id of the dialog of that title, once it has the keys."""
        dialog = window.wait_other_window()
        self.form = wait_for(title, lambda: window.find('frame', title))
        return dialog

    def node(self, window, role, name):
        return wait_for('%s %r' % (role, name),
                        lambda: window.find(role, name, self.form))

    def tab_to(self, window, role, name, most=100):
        """Tab until that control has the focus; each step is seen to be taken."""
        controls = [node for node in window.walk(self.form)
                    if node.get_state_set().contains(Atspi.StateType.FOCUSABLE)]

        def focused():
            return next((node for node in controls if window.has_focus(node)), None)
        for _ in range(most):
            here = wait_for('a focus', focused)
            if here.get_role_name() == role and here.get_name() == name:
                return here
            window.key('Tab')
            wait_for('Tab to leave %r' % here.get_name(),
                     lambda node=here: not window.has_focus(node))
        raise AssertionError('Tab never came to %s %r' % (role, name))

    def type_into(self, window, role, name, text):
        """In place of what stands there, by keys alone."""
        self.tab_to(window, role, name)
        window.key('ctrl+a', 'Delete')
        window.type(text)

    def sentence(self, window, pattern):
        """The label that says so."""
        return wait_for('the sentence %r' % pattern, lambda: next(
            (node.get_name() for node in window.walk(self.form)
             if node.get_role_name() == 'label' and re.search(pattern, node.get_name())),
            None))

    def is_on(self, window, button):
        return self.is_sensitive(self.node(window, 'push button', button))

    @staticmethod
    def is_sensitive(node):
        return node.get_state_set().contains(Atspi.StateType.SENSITIVE)

    @staticmethod
    def is_marked(entry):
        return entry.get_state_set().contains(Atspi.StateType.INVALID)
