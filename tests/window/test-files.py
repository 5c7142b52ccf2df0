# SPDX-License-Identifier: GPL-3.0-or-later
"""Opening, refusing, saving and closing, as a person would from keys and dialogs."""
import json

from gtkdrive import wait_for
from strutwright_window import DATA, WREN, WindowTest, main

FIELDFARE = json.loads((DATA / 'fieldfare.swcar').read_text())['name']


class Files(WindowTest):
    def bad_car(self):
        bad = self.folder / 'bad.swcar'
        car = json.loads(self.car.read_text())
        car['corner']['ball_joint'][1] = 'far'
        bad.write_text(json.dumps(car))
        return bad

    def title(self, window):
        return window.get('frame').get_name()

    def test_a_bad_file_from_the_command_line_is_refused_in_words(self):
        bad = self.bad_car()
        window = self.open(bad)
        text = wait_for('a sentence', window.message)
        self.assertIn('bad.swcar', text)
        self.assertIn('corner.ball_joint[1]', text)

    def test_a_bad_file_from_the_dialog_leaves_the_car_alone(self):
        bad = self.bad_car()
        before = bad.read_bytes()
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '3')
        window.wait_mount(3.0)
        window.key('ctrl+o')
        window.in_dialog(bad, location_key='ctrl+l')
        text = wait_for('a sentence', window.message)
        self.assertIn('corner.ball_joint[1]', text)
        self.assertEqual(window.mount(), (3.0, 0.0, 0.0))
        self.assertEqual(self.title(window), '• ' + WREN)
        self.assertTrue(window.is_enabled('undo'))
        self.assertEqual(bad.read_bytes(), before)

        window.click(window.get('push button', 'Dismiss'))
        wait_for('the sentence gone', lambda: window.message() is None)

    def test_another_car_from_the_dialog(self):
        window = self.open()
        window.key('ctrl+o')
        window.in_dialog(DATA / 'fieldfare.swcar', location_key='ctrl+l')
        wait_for('the other car', lambda: self.title(window) == FIELDFARE)
        self.assertIsNone(window.message())

    def test_opening_beside_unsaved_changes_takes_a_second_window(self):
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '3')
        window.wait_mount(3.0)
        window.key('ctrl+o')
        window.in_dialog(DATA / 'fieldfare.swcar', location_key='ctrl+l')
        window.window(FIELDFARE)
        self.assertTrue(window.find('frame', '• ' + WREN))

    def test_saving_untouched_keeps_every_byte(self):
        window = self.open()
        before = self.car.read_bytes()
        window.save(self.car)
        self.assertEqual(self.car.read_bytes(), before)

    def test_the_demo_car_asks_where_to_save(self):
        window = self.open_demo()
        window.enter(window.get('spin button', 'Inboard'), '3')
        window.wait_mount(3.0)
        window.key('ctrl+s')
        window.in_dialog(self.folder / 'mine')
        saved = self.folder / 'mine.swcar'  # the suffix is the program's to add
        wait_for('the file', saved.exists)
        mount = json.loads(saved.read_text())['setups'][0]['mount']
        self.assertEqual(mount['inboard_mm'], 3)
        wait_for('no mark of changes', lambda: self.title(window) == WREN)

    def test_save_as_leaves_the_first_file(self):
        window = self.open()
        before = self.car.read_bytes()
        window.enter(window.get('spin button', 'Up'), '2.5')
        window.wait_mount(0.0, 0.0, 2.5)
        window.key('ctrl+shift+s')
        window.in_dialog(self.folder / 'other.swcar')
        other = self.folder / 'other.swcar'
        wait_for('the file', other.exists)
        self.assertEqual(self.car.read_bytes(), before)
        self.assertEqual(
            json.loads(other.read_text())['setups'][0]['mount']['up_mm'], 2.5)

    def test_a_folder_that_is_gone_is_a_sentence_not_a_loss(self):
        window = self.open()
        window.enter(window.get('spin button', 'Up'), '2.5')
        window.wait_mount(0.0, 0.0, 2.5)
        self.car.unlink()
        self.folder.rename(self.folder.with_name(self.folder.name + '-moved'))
        try:
            window.key('ctrl+s')
            question = window.wait_other_window()  # the file is not what it was
            window.key('alt+o')
            window.wait_gone(question)
            text = wait_for('a sentence', window.message)
            self.assertIn('not saved', text)
            self.assertEqual(self.title(window), '• ' + WREN)
        finally:
            self.folder.with_name(self.folder.name + '-moved').rename(self.folder)


class Closing(WindowTest):
    def change_then_close(self):
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '3')
        window.wait_mount(3.0)
        window.key('ctrl+w')
        return window, window.wait_other_window()

    def has_ended(self, window):
        wait_for('the end', lambda: window.proc.poll() is not None)
        self.assertEqual(window.proc.returncode, 0)

    def test_without_changes_it_just_closes(self):
        window = self.open()
        window.key('ctrl+w')
        self.has_ended(window)

    def test_discard(self):
        before = self.car.read_bytes()
        window, _ = self.change_then_close()
        window.key('alt+d')
        self.has_ended(window)
        self.assertEqual(self.car.read_bytes(), before)

    def test_cancel_keeps_the_window(self):
        window, question = self.change_then_close()
        window.key('Escape')
        window.wait_gone(question)
        self.assertEqual(window.mount(), (3.0, 0.0, 0.0))

    def test_save_by_the_default_button(self):
        window, _ = self.change_then_close()
        window.key('Return')
        self.has_ended(window)
        mount = json.loads(self.car.read_text())['setups'][0]['mount']
        self.assertEqual(mount['inboard_mm'], 3)


if __name__ == '__main__':
    main()
