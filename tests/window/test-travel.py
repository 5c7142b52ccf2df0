# SPDX-License-Identifier: GPL-3.0-or-later
"""One travel for the whole window: wheel handle, slider, curves, keys."""
import re

from gtkdrive import wait_for
from strutwright_window import (CURVES, FRONT_MOUNT, FRONT_WHEEL, NUMBERS, TRAVEL,
                                WindowTest, main, shown_number, table_row)


class Travel(WindowTest):
    def test_dragging_the_wheel_up_is_bump(self):
        window = self.open()
        window.drag_handle(FRONT_WHEEL, 0, -10)
        travel = wait_for('a moved wheel', window.travel)
        self.assertGreater(travel, 5.0)
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))
        self.assertFalse(window.is_enabled('undo'))  # a look, not a change

        _, camber, _ = window.read_number('Camber')
        kernel = table_row(self.car, travel)['camber_deg']
        self.assertAlmostEqual(camber, kernel, delta=0.005 + 1e-9)

    def test_escape_brings_the_wheel_back(self):
        window = self.open()
        window.drag_handle(FRONT_WHEEL, 0, -10, keep=['Escape'])
        wait_for('travel', lambda: window.travel() == 0.0)

    def test_pressing_and_dragging_on_a_curve_moves_the_cursor(self):
        window = self.open()
        curves = window.get('image', CURVES)
        box = window.box(curves)
        x = box.width * 0.36  # in the large plots, right of their middle
        window.click(curves, x, 120)
        clicked = wait_for('travel', window.travel)
        self.assertGreater(clicked, 0.0)
        window.moves(curves, (x, 120), (x - 30, 120), (x - 60, 120))
        wait_for('droop of it', lambda: window.travel() < clicked)

    def test_pointing_at_a_curve_lights_it(self):
        window = self.open()
        curves = window.get('image', CURVES)
        window.click(curves, 200, 120)
        text = wait_for('words', curves.get_description)
        found = re.match(r'Camber: (\S+) ° at wheel travel (\S+) mm', text)
        self.assertTrue(found, text)
        kernel = table_row(self.car, shown_number(found[2]))['camber_deg']
        self.assertAlmostEqual(shown_number(found[1]), kernel, delta=0.005 + 1e-9)

    def test_travel_keys_are_the_same_on_curves_and_table(self):
        for name in (CURVES, NUMBERS):
            window = self.open()
            window.click(window.get('image', name), 100, 8)
            window.key('Home')
            for keys, travel in ((['Right'], 1.0), (['shift+Right'], 11.0),
                                 (['ctrl+Left'], 10.9), (['Page_Up'], 80.0),
                                 (['Page_Down'], -80.0), (['Home'], 0.0)):
                window.key(*keys)
                wait_for('%s at %g' % (keys, travel), lambda: window.travel() == travel)
            window.proc.terminate()
            window.proc.wait(10)

    def test_arrows_on_the_wheel_handle(self):
        window = self.open()
        window.click(window.handle(FRONT_WHEEL))
        window.key('Up', 'Up', 'Down', 'shift+Up')
        wait_for('travel', lambda: window.travel() == 6.0)
        window.key('Home')
        wait_for('travel', lambda: window.travel() == 0.0)

    def test_the_scale_moves_the_drawing(self):
        window = self.open()
        before = window.box(window.handle(FRONT_WHEEL)).y
        window.get('slider', TRAVEL).get_value_iface().set_current_value(60)
        wait_for('the wheel higher on the sheet',
                 lambda: window.box(window.handle(FRONT_WHEEL)).y < before)


class Zoom(WindowTest):
    def test_wheel_zooms_about_the_pointer_and_ctrl_0_fits(self):
        window = self.open()
        handle = window.handle(FRONT_MOUNT)
        place = window.box(handle)
        other = window.box(window.handle(FRONT_WHEEL))
        window.scroll(handle, 14, 14, 4)
        wait_for('the wheel further away', lambda: window.box(
            window.handle(FRONT_WHEEL)).y > other.y + 20)
        near = window.box(handle)
        self.assertLessEqual(abs(near.x - place.x) + abs(near.y - place.y), 3)
        window.key('ctrl+0')
        wait_for('the sheet fitted', lambda: abs(window.box(
            window.handle(FRONT_WHEEL)).y - other.y) <= 1)

    def test_dragging_the_paper_pans_it(self):
        window = self.open()
        handle = window.handle(FRONT_MOUNT)
        before = window.box(handle)
        window.moves(handle, (-60, 60), (-40, 60), (-10, 60))
        wait_for('the sheet moved', lambda: abs(window.box(handle).x - before.x - 50) <= 1)
        self.assertEqual(window.mount(), (0.0, 0.0, 0.0))


if __name__ == '__main__':
    main()
