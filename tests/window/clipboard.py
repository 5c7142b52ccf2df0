# SPDX-License-Identifier: GPL-3.0-or-later
"""Another program beside ours: with a text, it has copied that and keeps it in both
clipboards until it ends; without one it prints what there is to paste.
"""
import sys

import gi
gi.require_version('Gdk', '4.0')
gi.require_version('Gtk', '4.0')
from gi.repository import Gdk, GLib, GObject, Gtk  # noqa: E402

Gtk.init()
display = Gdk.Display.get_default()
loop = GLib.MainLoop()


def on_text(clipboard, result):
    try:
        sys.stdout.write(clipboard.read_text_finish(result) or '')
    except GLib.Error:
        pass  # nothing to paste, or no text
    loop.quit()


if len(sys.argv) == 1:
    display.get_clipboard().read_text_async(None, on_text)
else:
    text = GObject.Value(str, sys.argv[1])
    display.get_clipboard().set(text)
    display.get_primary_clipboard().set(text)
    print('copied', flush=True)
loop.run()
