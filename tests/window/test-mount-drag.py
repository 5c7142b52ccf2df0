# SPDX-License-Identifier: GPL-3.0-or-later
"""The upper mount under a real pointer and real keys: the main job of the program."""
import json

from gtkdrive import sh, wait_for
from strutwright_window import (FRONT_MOUNT, PLAN_MOUNT, SIDE_MOUNT, WindowTest, main,
                                table_row)


class MountDrag(WindowTest):
    def test_drag_inboard_adds_negative_camber_as_the_kernel_says(self):
        window = self.open()
        was, before, _ = window.read_number('Camber')
        window.drag_handle(FRONT_MOUNT, -6, 0)
        inboard, rearward, up = wait_for('a moved mount',
                                         lambda: window.mount()[0] and window.mount())
        self.assertGreater(inboard, 5.0)
        self.assertEqual((rearward, up), (0.0, 0.0))

        measured, now, sentence = window.read_number('Camber')
        # Common practice, no published source: top of the strut in, more negative camber
        self.assertLess(now, before)
        self.assertIn('top leans in', sentence)
        self.assertEqual(measured, was)

        window.save(self.car)
        mount = json.loads(self.car.read_text())['setups'][0]['mount']
        self.assertEqual(mount['inboard_mm'], inboard)
        kernel = table_row(self.car, 0)['camber_deg']
        self.assertAlmostEqual(now, kernel, delta=0.005 + 1e-9)

    def test_drag_keeps_to_the_scale_of_the_sheet(self):
        window = self.open()
        start = window.box(window.handle(FRONT_MOUNT)).x
        window.drag_handle(FRONT_MOUNT, -30, 0)
        wait_for('a moved mount', lambda: window.mount()[0])
        wait_for('the handle under the pointer', lambda: abs(
            start - 30 - window.box(window.handle(FRONT_MOUNT)).x) <= 1)

    def test_drag_in_side_view_moves_rearward_and_up(self):
        window = self.open()
        window.drag_handle(SIDE_MOUNT, 0, -16)
        inboard, rearward, up = wait_for('a raised mount',
                                         lambda: window.mount()[2] and window.mount())
        self.assertEqual((inboard, rearward), (0.0, 0.0))
        self.assertGreater(up, 5.0)

    def test_drag_in_plan_view_moves_both_ways(self):
        window = self.open()
        window.drag_handle(PLAN_MOUNT, -12, -12)
        inboard, rearward, up = wait_for('a moved mount',
                                         lambda: window.mount()[0] and window.mount())
        self.assertGreater(inboard, 3.0)
        self.assertNotEqual(rearward, 0.0)
        self.assertEqual(up, 0.0)

    def test_ctrl_drags_a_tenth(self):
        window = self.open()
        window.drag_handle(FRONT_MOUNT, -40, 0)
        coarse = wait_for('a moved mount', lambda: window.mount()[0])
        window.key('ctrl+z')
        window.wait_mount(0.0)
        sh('xdotool', 'keydown', 'ctrl')
        try:
            window.drag_handle(FRONT_MOUNT, -40, 0)
        finally:
            sh('xdotool', 'keyup', 'ctrl')
        fine = wait_for('a moved mount', lambda: window.mount()[0])
        self.assertAlmostEqual(fine, coarse / 10, delta=0.11)

    def test_one_drag_is_one_undo_step_back_to_the_bit(self):
        window = self.open()
        window.save(self.car)
        original = self.car.read_bytes()
        window.drag_handle(FRONT_MOUNT, -20, -10)
        moved = wait_for('a moved mount', lambda: window.mount()[0] and window.mount())
        window.save(self.car)
        changed = self.car.read_bytes()
        self.assertNotEqual(changed, original)

        window.key('ctrl+z')
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))
        window.save(self.car)
        self.assertEqual(self.car.read_bytes(), original)

        window.key('ctrl+shift+z')
        window.wait_mount(*moved)
        self.assertFalse(window.is_enabled('redo'))
        window.save(self.car)
        self.assertEqual(self.car.read_bytes(), changed)

    def test_escape_in_a_drag_leaves_no_trace(self):
        window = self.open()
        window.drag_handle(FRONT_MOUNT, -20, 0, keep=['Escape'])
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))
        self.assertFalse(window.get('frame').get_name().startswith('•'))
        window.drag_handle(FRONT_MOUNT, -20, 0)
        wait_for('a drag after it', lambda: window.mount()[0] > 5.0)

    def test_escape_keeps_an_earlier_step(self):
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '4')
        window.wait_mount(4.0)
        window.drag_handle(FRONT_MOUNT, -20, 0, keep=['Escape'])
        window.wait_mount(4.0)
        window.key('ctrl+z')
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))
        self.assertTrue(window.is_enabled('redo'))

    def test_double_click_puts_the_mount_back(self):
        window = self.open()
        window.drag_handle(FRONT_MOUNT, -20, 0)
        wait_for('a moved mount', lambda: window.mount()[0])
        window.double_click(lambda: window.handle(FRONT_MOUNT),
                            lambda: window.mount() == (0.0, 0.0, 0.0))
        window.key('ctrl+z')
        wait_for('the double click undone', lambda: window.mount()[0] > 5.0)


class MountKeys(WindowTest):
    def focus_front_mount(self, window):
        window.click(window.handle(FRONT_MOUNT))
        wait_for('focus', lambda: window.focused().get_name() == FRONT_MOUNT)

    def test_arrows_do_what_the_drag_does(self):
        window = self.open()
        self.focus_front_mount(window)
        window.key('Left')
        window.wait_mount(1.0)
        window.key('shift+Left')
        window.wait_mount(6.0)
        window.key('ctrl+Right')
        window.wait_mount(5.9)
        window.key('Up', 'Up', 'shift+Down')
        window.wait_mount(5.9, 0.0, -3.0)

        _, now, _ = window.read_number('Camber')
        window.save(self.car)
        self.assertAlmostEqual(now, table_row(self.car, 0)['camber_deg'], delta=0.005)

    def test_keys_and_drag_to_one_place_save_one_file(self):
        dragged = self.open()
        dragged.drag_handle(FRONT_MOUNT, -4, 0)
        inboard = wait_for('a moved mount', lambda: dragged.mount()[0])
        dragged.save(self.car)
        by_drag = self.car.read_bytes()
        dragged.key('ctrl+z')
        dragged.wait_mount(0.0)
        self.focus_front_mount(dragged)
        dragged.key(*['Left'] * int(inboard),
                    *['ctrl+Left'] * round(inboard % 1 * 10))
        dragged.wait_mount(inboard)
        dragged.save(self.car)
        self.assertEqual(self.car.read_bytes(), by_drag)

    def test_home_puts_the_mount_back(self):
        window = self.open()
        self.focus_front_mount(window)
        window.key('shift+Left', 'shift+Up')
        window.wait_mount(5.0, 0.0, 5.0)
        window.key('Home')
        window.wait_mount(0.0)
        window.key('ctrl+z')
        window.wait_mount(5.0, 0.0, 5.0)

    def test_each_key_is_an_undo_step(self):
        window = self.open()
        self.focus_front_mount(window)
        window.key('Left', 'Left', 'Left')
        window.wait_mount(3.0)
        for left in (2.0, 1.0, 0.0):
            window.key('ctrl+z')
            window.wait_mount(left)
        self.assertFalse(window.is_enabled('undo'))


if __name__ == '__main__':
    main()
