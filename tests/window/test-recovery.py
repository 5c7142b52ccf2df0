# SPDX-License-Identifier: GPL-3.0-or-later
"""Nothing is lost: a killed program leaves its work, and no foreign change is overwritten."""
import json
import os
import pathlib

from gtkdrive import wait_for
from strutwright_window import WREN, Window, WindowTest, main

SAVED, CHANGED = WREN, '• ' + WREN


class RecoveryTest(WindowTest):
    def copies(self):
        folder = pathlib.Path(os.environ['XDG_STATE_HOME']) / 'strutwright/recovery'
        return sorted(folder.glob('*')) if folder.is_dir() else []

    def kept(self):
        """Copies that are whole: what they belong to is written before them."""
        return [path for path in self.copies() if path.suffix == '.swcar']

    def mount_in_file(self):
        return json.loads(self.car.read_text())['setups'][0]['mount']['inboard_mm']

    def change(self, window, inboard):
        window.enter(window.get('spin button', 'Inboard'), str(inboard))
        window.wait_mount(inboard)
        wait_for('the mark of changes', lambda: window.get('frame').get_name() == CHANGED)

    def offer(self, window):
        """The button that takes the work back, when it is offered."""
        button = window.find('push button', 'Recover')
        if button is None:
            return None
        revealer = button.get_parent().get_parent()
        return button if window.box(revealer).height > 0 else None


class Killed(RecoveryTest):
    def leave_work(self, inboard=7.0):
        window = Window(self.car)
        self.change(window, inboard)
        wait_for('the copy', self.kept)
        window.proc.kill()
        window.proc.wait(60)
        window.proc.stderr.close()

    def test_without_changes_nothing_is_left(self):
        window = Window(self.car)
        window.proc.kill()
        window.proc.wait(60)
        window.proc.stderr.close()
        self.assertEqual(self.copies(), [])
        self.assertIsNone(self.offer(self.open()))

    def test_recover_brings_the_work_back(self):
        before = self.car.read_bytes()
        self.leave_work()
        window = self.open()
        button = wait_for('the offer', lambda: self.offer(window))
        self.assertTrue(any('Wren' in node.get_name() and 'saved' in node.get_name()
                            for node in window.walk(button.get_parent())))
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))
        window.click(button)
        window.wait_mount(7.0)
        wait_for('the mark of changes', lambda: window.get('frame').get_name() == CHANGED)
        wait_for('no offer', lambda: self.offer(window) is None)
        self.assertEqual(self.car.read_bytes(), before)
        window.save(self.car)
        self.assertEqual(self.mount_in_file(), 7)
        wait_for('no copy', lambda: self.copies() == [])

    def test_the_demo_car_too_comes_back(self):
        window = self.open_demo()
        self.change(window, 5.0)
        wait_for('the copy', self.kept)
        window.proc.kill()
        window.proc.wait(60)
        again = self.open_demo()
        again.click(wait_for('the offer', lambda: self.offer(again)))
        again.wait_mount(5.0)

    def test_killed_again_it_is_offered_again(self):
        self.leave_work()
        window = Window(self.car)
        window.click(wait_for('the offer', lambda: self.offer(window)))
        window.wait_mount(7.0)
        wait_for('the copy', self.kept)
        window.proc.kill()
        window.proc.wait(60)
        window.proc.stderr.close()
        again = self.open()
        again.click(wait_for('the offer', lambda: self.offer(again)))
        again.wait_mount(7.0)

    def test_discard_removes_it(self):
        before = self.car.read_bytes()
        self.leave_work()
        window = self.open()
        wait_for('the offer', lambda: self.offer(window))
        window.click(window.get('push button', 'Discard It'))
        wait_for('no offer', lambda: self.offer(window) is None)
        wait_for('no copy', lambda: self.copies() == [])
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))
        self.assertEqual(self.car.read_bytes(), before)

    def test_work_in_the_window_is_not_pushed_out_by_recovering(self):
        self.leave_work()
        window = self.open()
        button = wait_for('the offer', lambda: self.offer(window))
        self.change(window, 2.0)
        window.click(button)
        window.wait_other_window()
        self.assertEqual(window.spin('Inboard'), 2.0)

    def test_closing_in_peace_leaves_nothing(self):
        window = self.open()
        self.change(window, 3.0)
        wait_for('the copy', self.kept)
        window.key('ctrl+w')
        window.wait_other_window()
        window.key('alt+d')
        wait_for('the end', lambda: window.proc.poll() is not None)
        self.assertEqual(self.copies(), [])


class ChangedOnDisk(RecoveryTest):
    def change_on_both_sides(self):
        window = self.open()
        self.change(window, 4.0)
        car = json.loads(self.car.read_text())
        car['notes'] = 'Another program was here.'
        self.car.write_text(json.dumps(car))
        theirs = self.car.read_bytes()
        window.key('ctrl+s')
        return window, theirs, window.wait_other_window()

    def test_cancel_leaves_the_file(self):
        window, theirs, question = self.change_on_both_sides()
        window.get('push button', 'Overwrite')
        window.key('Escape')
        window.wait_gone(question)
        self.assertEqual(self.car.read_bytes(), theirs)
        self.assertEqual(window.get('frame').get_name(), CHANGED)
        window.wait_mount(4.0)

    def test_return_leaves_the_file(self):
        window, theirs, question = self.change_on_both_sides()
        window.key('Return')
        window.wait_gone(question)
        self.assertEqual(self.car.read_bytes(), theirs)

    def test_overwrite_writes_ours(self):
        window, theirs, question = self.change_on_both_sides()
        window.key('alt+o')
        window.wait_gone(question)
        wait_for('our file', lambda: self.car.read_bytes() != theirs)
        self.assertEqual(self.mount_in_file(), 4)
        wait_for('no mark', lambda: window.get('frame').get_name() == SAVED)

    def test_save_as_keeps_both(self):
        window, theirs, question = self.change_on_both_sides()
        window.key('alt+a')
        window.wait_gone(question)
        window.in_dialog(self.folder / 'mine.swcar')
        wait_for('our file', (self.folder / 'mine.swcar').exists)
        self.assertEqual(self.car.read_bytes(), theirs)

    def test_closing_asks_about_it_too(self):
        window, theirs, question = self.change_on_both_sides()
        window.key('Escape')
        window.wait_gone(question)
        window.key('ctrl+w')
        closing = window.wait_other_window()
        window.key('Return')  # Save
        question = window.wait_other_window(closing)
        window.key('Escape')
        window.wait_gone(question)
        self.assertIsNone(window.proc.poll())
        self.assertEqual(self.car.read_bytes(), theirs)


if __name__ == '__main__':
    main()
