# SPDX-License-Identifier: GPL-3.0-or-later
"""The typed side of every drag: spin buttons, toe and ride height."""
import json
import re
import time

from gtkdrive import Atspi, sh, wait_for
from strutwright_window import FRONT_MOUNT, WindowTest, command, main

DIFFERS = 'Right side differs'
OWN_ENTRIES = [name + ', right side' for name in ('Inboard', 'Rearward', 'Up', 'Camber bolt')]


class Panel(WindowTest):
    def test_typed_offsets_give_set_m_its_numbers(self):
        """Set M was solved apart from the program: raw constraints in a root finder."""
        car = self.folder / 'set-m.swcar'
        car.write_text(SET_M)
        window = self.open(car, title='Set M')
        self.assert_shown(window, SET_M_AS_MEASURED)
        window.enter(window.get('spin button', 'Inboard'), '10')
        window.wait_mount(10.0)
        self.assert_shown(window, SET_M_10_INBOARD)
        window.enter(window.get('spin button', 'Inboard'), '15')
        window.enter(window.get('spin button', 'Rearward'), '10')
        window.wait_mount(15.0, 10.0)
        self.assert_shown(window, SET_M_15_INBOARD_10_REARWARD)

    def assert_shown(self, window, numbers):
        """As many decimals as the window shows, and half a unit of the last one."""
        for quantity, (wanted, half_unit) in numbers.items():
            _, shown, _ = window.read_number(quantity)
            self.assertAlmostEqual(shown, wanted, delta=half_unit + 1e-9, msg=quantity)

    def test_a_mount_past_the_towers_edge_is_told(self):
        """The opening is 82 mm wide, its centre 3 mm inboard, 2 mm back of the mount."""
        def told():
            return [node.get_name() for node in window.walk()
                    if node.get_role_name() == 'label' and 'tower' in node.get_name()]
        window = self.open()
        self.assertEqual(told(), [])
        window.enter(window.get('spin button', 'Rearward'), '2')
        window.enter(window.get('spin button', 'Inboard'), '50')
        sentence = wait_for('a warning', told)[0]
        self.assertIn('The upper mount stands 6.0 mm past the tower\'s edge', sentence)
        window.save(self.car)
        run = command('check', self.car)
        self.assertIn('edge-too-near: ', run.stdout)
        for line in run.stdout.splitlines():
            if line.startswith('edge-too-near: '):
                self.assertIn(line.partition(': ')[2], sentence)
        window.key('ctrl+z')
        wait_for('no warning', lambda: not told())

    def test_warnings_follow_a_drag(self):
        """Told, and taken back, while the button is still held."""
        def told():
            return [node.get_name() for node in window.walk() if
                    node.get_role_name() == 'label' and 'past the tower' in node.get_name()]
        window = self.open()
        self.assertEqual(told(), [])
        handle = window.handle(FRONT_MOUNT)
        x, y = window.at(handle)
        at = 'mousemove', '--window', window.win
        sh('xdotool', *at, x, y, 'sleep', 0.05, 'mousedown', 1, *at, x - 20, y, 'sleep',
           0.05, *at, x - 60, y)
        self.addCleanup(sh, 'xdotool', 'mouseup', 1)
        wait_for('a warning', told)
        sh('xdotool', *at, x - 2, y)
        wait_for('no warning', lambda: not told())
        self.assertFalse(window.is_enabled('undo'))  # the drag is not over

    def test_warnings_out_of_sight_are_counted(self):
        """A button stands for them until they are seen; pressed, it shows them."""
        def below(name):
            return window.find('push button', name)

        window = self.open()
        self.assertIsNone(below('2 warnings below'))
        window.pick('12 in, 6 back')
        self.assertIsNone(below('2 warnings below'))  # there is room for them
        sh('xdotool', 'windowsize', window.win, 1024, 640)
        button = wait_for('a count', lambda: below('2 warnings below'))
        warnings = next(node for node in window.walk() if node.get_role_name() == 'label'
                        and node.get_name().startswith('Setup “12 in, 6 back”: Camber'))
        place = window.box(window.find('frame'))
        self.assertGreater(window.box(warnings).y, place.height)
        self.assertGreaterEqual(window.box(button).height, 24)
        window.click(window.get('spin button', 'Lowered by'), 20)
        window.tab_to('push button', '2 warnings below')
        window.key('space')
        wait_for('no count', lambda: not below('2 warnings below'))
        shown = window.box(warnings)
        self.assertLessEqual(shown.y + shown.height, place.y + place.height)
        wait_for('the keys nearby', lambda: window.has_focus(
            window.find('push button', 'What would put it back?')))

    def test_a_refused_text_never_comes_back_unmarked(self):
        """Undo in the entry takes it back, and after Escape does not bring it again."""
        def is_marked():
            return entry.get_state_set().contains(Atspi.StateType.INVALID)
        window = self.open()
        entry = window.get('spin button', 'Inboard')
        for take_back in 'ctrl+z', 'Escape':
            window.click(entry, 20)
            window.key('ctrl+a')
            window.type('far')
            window.key('Return')
            wait_for('the mark', is_marked)
            self.assertEqual(window.text(entry), 'far')
            window.key(take_back)
            wait_for('the number', lambda: window.text(entry) == '0.0')
            wait_for('no mark', lambda: not is_marked())
            for key in 'ctrl+z', 'ctrl+shift+z':
                window.key(key)
                time.sleep(0.2)
                self.assertEqual(window.text(entry), '0.0')
        self.assertFalse(window.is_enabled('undo'))

    def test_typing_is_one_step_and_undone(self):
        window = self.open()
        window.enter(window.get('spin button', 'Rearward'), '12.5')
        window.wait_mount(0.0, 12.5)
        window.key('ctrl+z')
        window.wait_mount(0.0)
        self.assertFalse(window.is_enabled('undo'))

    def test_toe_reset_turns_the_tie_rod(self):
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '12')
        window.wait_mount(12.0)
        _, moved, _ = window.read_number('Toe-in')
        self.assertNotEqual(moved, 0.05)
        window.click(window.get('check box', 'Reset with the tie rod'), 8)
        wait_for('the tie rod turned', lambda: any(
            re.fullmatch(r'Tie rod [\d.]+ mm (longer|shorter): [\d.]+ turns',
                         node.get_name())
            for node in window.walk() if node.get_role_name() == 'label'))
        _, toe, _ = window.read_number('Toe-in')
        self.assertEqual(toe, 0.05)
        window.save(self.car)
        self.assertIn('"reset"', self.car.read_text().split('"setups"')[1].split('}')[1])

    def test_back_to_where_it_was_measured(self):
        window = self.open()
        window.enter(window.get('spin button', 'Up'), '-7')
        window.wait_mount(0.0, 0.0, -7.0)
        window.click(window.get('push button', 'Back to where it was measured'))
        window.wait_mount(0.0)

    def test_lowering_takes_the_standing_travel_along(self):
        window = self.open()
        window.enter(window.get('spin button', 'Lowered by'), '20')
        wait_for('travel', lambda: window.travel() == 20.0)


class RightSide(WindowTest):
    """A setup that has its own right side: entries for it, by keys and by mouse."""

    def own_right(self, window):
        window.tab_to('check box', DIFFERS)
        window.key('space')
        entry = window.get('spin button', OWN_ENTRIES[0])
        wait_for('the right side', lambda: window.box(entry).height > 0)

    def is_checked(self, window):
        return window.get('check box', DIFFERS).get_state_set().contains(
            Atspi.StateType.CHECKED)

    def type_into(self, window, name, text):
        """By keys: the panel scrolls to what has the focus."""
        entry = window.tab_to('spin button', name)
        window.key('ctrl+a')
        window.type(text)
        window.key('Return')
        wait_for('%s in %s' % (text, name), lambda: window.value(entry) == float(text))

    def saved(self, window):
        window.save(self.car)
        return json.loads(self.car.read_text())['setups'][0]

    def test_its_values_go_into_the_file_and_back(self):
        window = self.open()
        window.enter(window.get('spin button', 'Inboard'), '4')
        window.wait_mount(4.0)
        self.assertIsNone(window.find('label', 'Right side'))
        self.own_right(window)
        self.assertEqual(window.spin(OWN_ENTRIES[0]), 4.0)  # the left side's, at first
        for heading in ('Left side', 'Right side'):
            self.assertIsNotNone(window.find('label', heading))
        for name, text in zip(OWN_ENTRIES, ('9.5', '-3', '2', '-0.75')):
            self.type_into(window, name, text)
        setup = self.saved(window)
        self.assertEqual(setup['right'], {'inboard_mm': 9.5, 'rearward_mm': -3, 'up_mm': 2,
                                          'camber_bolt_deg': -0.75})
        self.assertEqual(setup['mount'],
                         {'inboard_mm': 4, 'rearward_mm': 0, 'up_mm': 0})
        window.tab_to('check box', DIFFERS, key='shift+Tab')
        window.key('space')
        wait_for('one side', lambda: not self.is_checked(window))
        self.assertNotIn('right', self.saved(window))

    def test_each_edit_is_undone_by_itself(self):
        window = self.open()
        self.own_right(window)
        self.type_into(window, OWN_ENTRIES[1], '7')
        window.key('ctrl+z')
        wait_for('as the left', lambda: window.spin(OWN_ENTRIES[1]) == 0.0)
        self.assertTrue(self.is_checked(window))
        window.key('ctrl+z')
        wait_for('no right side', lambda: not self.is_checked(window))
        self.assertFalse(window.is_enabled('undo'))
        window.key('ctrl+shift+z', 'ctrl+shift+z')
        wait_for('it again', lambda: self.is_checked(window)
                 and window.spin(OWN_ENTRIES[1]) == 7.0)

    def test_home_takes_both_sides_there_in_one_step(self):
        window = self.open()
        self.own_right(window)
        self.type_into(window, OWN_ENTRIES[0], '6')
        window.click(window.get('push button', 'Back to where it was measured'))
        wait_for('home', lambda: window.spin(OWN_ENTRIES[0]) == 0.0)
        window.key('ctrl+z')
        wait_for('back', lambda: window.spin(OWN_ENTRIES[0]) == 6.0)

    def test_it_fits_the_panel_of_a_small_window(self):
        window = self.open()
        frame = window.get('frame')
        sh('xdotool', 'windowsize', window.win, 1024, 640)
        wait_for('the size', lambda: window.box(frame).width <= 1024
                 and window.box(frame).height <= 640)
        width = window.box(window.get('list', 'Setups')).width
        self.own_right(window)
        self.assertEqual(window.box(window.get('list', 'Setups')).width, width)
        whole = window.box(frame)
        for name in OWN_ENTRIES:
            entry = window.tab_to('spin button', name)
            wait_for(name + ' on the screen', lambda: window.box(entry).y >= 0
                     and window.box(entry).y + window.box(entry).height <= whole.height)
            box = window.box(entry)
            self.assertGreater(box.width, 60, name)
            self.assertGreaterEqual(box.x, 0, name)
            self.assertLessEqual(box.x + box.width, whole.width, name)


def set_m(camber, toe_in, caster, sai, scrub_radius, trail, roll_centre):
    return {'Camber': (camber, 0.005), 'Toe-in': (toe_in, 0.005),
            'Caster': (caster, 0.005), 'Steering-axis inclination': (sai, 0.005),
            'Scrub radius': (scrub_radius, 0.05), 'Caster trail': (trail, 0.05),
            'Roll-centre height': (roll_centre, 0.05)}


SET_M_AS_MEASURED = set_m(-0.5, 0.1, 3.5215, 10.8855, 7.043, 16.379, 76.66)
SET_M_10_INBOARD = set_m(-1.3630, 0.4581, 3.5164, 11.7202, 7.190, 15.853, 81.25)
SET_M_15_INBOARD_10_REARWARD = set_m(-1.7911, 0.5869, 4.3909, 12.1372, 7.250, 20.212,
                                     83.78)
SET_M = '''{
  "format": "strutwright-car", "version": 1, "name": "Set M",
  "corner": {
    "arm_front_pivot": [10, 380, 200], "arm_rear_pivot": [-300, 395, 210],
    "ball_joint": [5, 700, 185], "upper_mount": [-35, 575, 835],
    "strut_foot": [-12, 640, 430], "tie_rod_outer": [-130, 690, 240],
    "tie_rod_inner": [-145, 345, 251], "wheel_centre": [0, 740, 300]
  },
  "alignment": { "camber_deg": -0.5, "toe_in_deg": 0.1 },
  "tyre": { "loaded_radius_mm": 300, "section_width_mm": 165 },
  "travel": { "bump_mm": 80, "droop_mm": 80 },
  "setups": [
    { "name": "As measured",
      "mount": { "inboard_mm": 0, "rearward_mm": 0, "up_mm": 0 },
      "lowering_mm": 0, "toe": "as-moved" }
  ]
}
'''


if __name__ == '__main__':
    main()
