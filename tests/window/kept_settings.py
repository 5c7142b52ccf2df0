# SPDX-License-Identifier: GPL-3.0-or-later
"""Windows that keep their settings in a file of the test's."""
import configparser
import os
import pathlib

from gtkdrive import wait_for
from strutwright_window import WindowTest

GROUP = 'org/strutwright/Strutwright'


class KeptTest(WindowTest):
    def setUp(self):
        super().setUp()
        config = pathlib.Path(os.environ['XDG_CONFIG_HOME'])
        self.file = config / 'glib-2.0/settings/keyfile'
        self.file.unlink(missing_ok=True)
        self.set_environment(GSETTINGS_BACKEND='keyfile')

    def set_environment(self, **variables):
        for name, value in variables.items():
            before = os.environ.get(name)
            self.addCleanup(self.put, name, before)
            self.put(name, value)

    @staticmethod
    def put(name, value):
        if value is None:
            os.environ.pop(name, None)
        else:
            os.environ[name] = value

    def kept(self, key):
        parser = configparser.ConfigParser(interpolation=None)
        parser.read(self.file)
        return parser.get(GROUP, key, fallback=None)

    def keep_by_hand(self, **values):
        self.file.parent.mkdir(parents=True, exist_ok=True)
        lines = ['%s=%s' % (name.replace('_', '-'), value) for name, value in values.items()]
        self.file.write_text('\n'.join(['[%s]' % GROUP, *lines, '']))

    def end(self, window):
        window.key('ctrl+q')
        wait_for('the end', lambda: window.proc.poll() is not None)
