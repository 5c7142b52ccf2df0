# SPDX-License-Identifier: GPL-3.0-or-later
"""The measuring guide in its window."""
import re

from gtkdrive import wait_for
from strutwright_window import WREN, WindowTest, command, main


class Guide(WindowTest):
    def open_guide(self, window):
        window.activate('guide')
        dialog = window.wait_other_window()
        wait_for('the pages', lambda: window.box(
            window.get('image', 'Measuring guide, page 1 of 6')).width > 400)
        return dialog

    def test_every_page_is_shown_as_wide_as_there_is_room(self):
        window = self.open()
        self.open_guide(window)
        boxes = [window.box(window.get('image', 'Measuring guide, page %d of 6' % n))
                 for n in range(1, 7)]
        for above, below in zip(boxes, boxes[1:]):
            self.assertGreaterEqual(below.y, above.y + above.height)
        for box in boxes:  # A4 (ISO 216), or Letter where the desktop prints on that
            self.assertTrue(any(abs(box.height / box.width - ratio) < 0.01
                                for ratio in (297 / 210, 11 / 8.5)), (box.width, box.height))

    def test_saved_by_keys_it_is_the_command_lines(self):
        window = self.open()
        dialog = self.open_guide(window)
        saved, written = self.folder / 'from the window', self.folder / 'written.pdf'
        window.key('Return')
        window.in_dialog(saved, dialog)
        saved = saved.with_suffix('.pdf')
        wait_for('the file', saved.exists)
        window.wait_gone(dialog)
        pages = re.findall(rb'/MediaBox \[ 0 0 ([0-9.]+) ', saved.read_bytes())
        self.assertEqual(len(pages), 6)
        paper = 'a4' if float(pages[0]) < 600 else 'letter'
        run = command('guide', self.car, '--paper', paper, '--output', written)
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertEqual(saved.read_bytes(), written.read_bytes())

    def test_the_menu_has_it_and_escape_closes_it(self):
        window = self.open()
        window.click(window.get('push button', 'Main menu'))
        window.press(wait_for('the entry', lambda: next(
            (node for node in window.walk() if node.get_role_name() == 'menu item'
             and node.get_name() == 'Measuring Guide…' and window.box(node).width > 0), None)))
        dialog = window.wait_other_window()
        window.key('Escape')
        window.wait_gone(dialog)
        self.assertEqual(window.window(WREN), window.win)


if __name__ == '__main__':
    main()
