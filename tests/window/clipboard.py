# SPDX-License-Identifier: GPL-3.0-or-later
"""Another program that has copied a text: keeps it in both clipboards until it ends."""
import sys

import gi
gi.require_version('Gdk', '4.0')
gi.require_version('Gtk', '4.0')
from gi.repository import Gdk, GLib, GObject, Gtk  # noqa: E402

Gtk.init()
text = GObject.Value(str, sys.argv[1])
display = Gdk.Display.get_default()
display.get_clipboard().set(text)
display.get_primary_clipboard().set(text)
print('copied', flush=True)
GLib.MainLoop().run()
