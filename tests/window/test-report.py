# SPDX-License-Identifier: GPL-3.0-or-later
"""The report's window: what goes into it, its pages, and the PDF that comes out."""
import datetime
import re
import subprocess
import time

from form_dialog import FormTest
from gtkdrive import Atspi, sh, wait_for
from strutwright_window import command, main

PARTS = ('The car as measured', 'Setups side by side', 'Curves against wheel travel',
         'Sheet of the corner', 'Roll centre against lowering', 'What it stands on',
         'Where the load goes')
PAGES = (*PARTS[:6], PARTS[5], PARTS[6])  # the springs' sizes have one of their own
TODAY = datetime.date.today().isoformat()


def page_texts(path):
    """What stands on each page, by a reader that is not the project's."""
    run = subprocess.run(['pdftotext', '-layout', path, '-'], text=True, timeout=60,
                         stdout=subprocess.PIPE, check=True)
    return run.stdout.split('\f')[:-1]


class Report(FormTest):
    def open_report(self, window):
        window.key('ctrl+p')
        dialog = self.dialog(window, 'Report')
        wait_for('the page', lambda: window.box(
            self.node(window, 'image', 'Preview')).width > 200)
        return dialog

    def wait_page(self, window, words):
        self.sentence(window, '^%s$' % re.escape(words))
        wait_for('its description', lambda: self.node(
            window, 'image', 'Preview').get_description() == words)

    def save(self, window, dialog, path):
        self.tab_to(window, 'push button', 'Save as PDF…')
        window.key('Return')
        window.in_dialog(path, dialog)
        wait_for('the report', path.exists)

    def test_pages_turn_by_keys_and_by_mouse(self):
        window = self.open()
        dialog = self.open_report(window)
        for i, part in enumerate(PAGES):
            self.wait_page(window, 'Page %d of 8: %s' % (i + 1, part))
            window.key('Page_Down')
        self.wait_page(window, 'Page 8 of 8: ' + PAGES[7])
        window.key('Page_Up')
        self.wait_page(window, 'Page 7 of 8: ' + PAGES[6])
        with window.inside(dialog, 'Report'):
            window.click(self.node(window, 'push button', 'Previous page'))
            self.wait_page(window, 'Page 6 of 8: ' + PAGES[5])
            window.click(self.node(window, 'push button', 'Next page'))
        self.wait_page(window, 'Page 7 of 8: ' + PAGES[6])
        window.key('Escape')
        window.wait_gone(dialog)

    def test_keys_alone_choose_and_save(self):
        """The PDF is the command line's, to the byte."""
        window = self.open()
        sh('xdotool', 'mousemove', 5, 5)
        dialog = self.open_report(window)
        for part in PARTS[2], PARTS[4], PARTS[5]:
            self.tab_to(window, 'check box', part)
            window.key('space')
            wait_for('%s off' % part, lambda p=part: not self.node(
                window, 'check box', p).get_state_set().contains(
                    Atspi.StateType.CHECKED))
        self.sentence(window, '^Page 1 of 4: ')
        path = self.folder / 'keys.pdf'
        self.save(window, dialog, path)
        window.wait_gone(dialog)
        texts = page_texts(path)
        self.assertEqual(len(texts), 4)
        for i, part in enumerate((PARTS[0], PARTS[1], PARTS[3], PARTS[6])):
            self.assertIn(part, texts[i])
            self.assertRegex(texts[i], r'\b%d ?/ ?4\n' % (i + 1))
            self.assertIn(TODAY, texts[i])

        like = self.folder / 'like.pdf'
        setups = [word for name in ('12 in, 6 back', 'Plate, 20 lower, toe reset',
                                    'As measured') for word in ('--setup', name)]
        pages = [word for name in ('car', 'setups', 'sheet', 'loads')
                 for word in ('--page', name)]
        run = command('report', self.car, '--output', like, '--date', TODAY, *setups,
                      *pages)
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertEqual(path.read_bytes(), like.read_bytes())

    def test_paper_date_and_load_case(self):
        window = self.open()
        dialog = self.open_report(window)
        with window.inside(dialog, 'Report'):
            window.click(self.node(window, 'check box', "Today's date on the pages"))
            window.click(self.node(window, 'combo box', 'Paper'))
            time.sleep(0.3)  # the list takes the keys
            window.key('Home', 'Down', 'Return')
            window.click(self.node(window, 'combo box', 'Load case'))
            time.sleep(0.3)
            window.key('Down', 'Return')
        self.wait_page(window, 'Page 9 of 9: ' + PARTS[6])  # a shorter paper
        path = self.folder / 'letter'
        self.save(window, dialog, path.with_suffix('.pdf'))
        path = path.with_suffix('.pdf')
        # 8.5 by 11 inches of 72 points
        self.assertEqual(path.read_bytes().count(b'/MediaBox [ 0 0 612 792 ]'), 9)
        texts = page_texts(path)
        self.assertNotIn(TODAY, ''.join(texts))
        self.assertIn('Cornering, outer wheel', texts[8])

    def test_nothing_chosen_is_nothing_to_save(self):
        window = self.open()
        self.open_report(window)
        for part in PARTS:
            self.tab_to(window, 'check box', part)
            window.key('space')
        self.sentence(window, '^Choose what to include')
        wait_for('no saving', lambda: not self.is_on(window, 'Save as PDF…'))
        self.assertFalse(self.is_on(window, 'Print…'))
        window.key('space')
        self.wait_page(window, 'Page 1 of 1: ' + PARTS[6])
        wait_for('saving', lambda: self.is_on(window, 'Save as PDF…'))

    def test_saving_can_be_called_off(self):
        window = self.open()
        dialog = self.open_report(window)
        self.tab_to(window, 'push button', 'Save as PDF…')
        window.key('Return')
        chooser = window.wait_other_window(dialog)
        time.sleep(0.5)  # while it opens it takes no keys
        window.key('Escape')
        window.wait_gone(chooser)
        wait_for('the keys', lambda: window.active() == dialog)
        window.key('Escape')
        window.wait_gone(dialog)


if __name__ == '__main__':
    main()
