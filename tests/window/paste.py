# SPDX-License-Identifier: GPL-3.0-or-later
"""Another program that pastes: prints the clipboard's text, or its picture's size."""
import sys

import gi
gi.require_version('Gdk', '4.0')
gi.require_version('Gtk', '4.0')
from gi.repository import Gdk, GLib, Gtk  # noqa: E402

Gtk.init()
loop = GLib.MainLoop()
clipboard = Gdk.Display.get_default().get_clipboard()


def on_text(board, result):
    sys.stdout.write(board.read_text_finish(result))
    loop.quit()


def on_texture(board, result):
    texture = board.read_texture_finish(result)
    if len(sys.argv) > 2:
        texture.save_to_png(sys.argv[2])
    print(texture.get_width(), texture.get_height())
    loop.quit()


if sys.argv[1] == 'text':
    clipboard.read_text_async(None, on_text)
else:
    clipboard.read_texture_async(None, on_texture)
GLib.timeout_add_seconds(20, loop.quit)
loop.run()
