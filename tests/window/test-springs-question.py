# SPDX-License-Identifier: GPL-3.0-or-later
"""The question "Springs": what carries the wheel, and the editor of the set below it."""
import csv
import io
import json
import math
import time

from gtkdrive import Atspi, sh, wait_for
from strutwright_window import DATA, WindowTest, command, main

BOARD = 'What carries the wheel through its travel'
PERCH = 'Coil: Perch'
RATE = 'Coil: Rate'
CLAMP = 'Torsion bar: Clamp angle'
BY_PERCH = 'Stand at this height by the perch'
BY_ANGLE = 'Stand at this height by the clamp angle'
OTHER = '12 in, 6 back'
G = 9.80665  # m/s², standard acceleration of free fall, ISO 80000-3


class SpringsTest(WindowTest):
    """On a car that nothing is known of but its corner and its weight."""

    def setUp(self):
        super().setUp()
        car = json.loads(self.car.read_text())
        car.pop('springs', None)
        car.pop('strut', None)
        for setup in car['setups']:
            setup.pop('springs', None)
            setup.pop('rod', None)
        self.car.write_text(json.dumps(car))

    def open_page(self):
        window = self.open()
        window.key('alt+4')
        board = window.get('image', BOARD)
        wait_for('the board', lambda: window.box(board).width > 0)
        check = window.get('check box', 'Coil')
        wait_for('the editor', lambda: window.box(check).height > 0)
        return window

    def tab_to(self, window, role, name, most=100):
        """In the strip, by Tab from its switch on, which comes right before it."""
        window.click(window.get('page tab', 'What It Stands On'))
        controls = [node for node in window.walk()
                    if node.get_state_set().contains(Atspi.StateType.FOCUSABLE)]
        last = [0]

        def focused():
            for i in range(len(controls)):
                at = (last[0] + i) % len(controls)
                if window.has_focus(controls[at]):
                    last[0] = at
                    return controls[at]
            return None
        for _ in range(most):
            here = wait_for('a focus', focused)
            if here.get_role_name() == role and here.get_name() == name:
                return here
            window.key('Tab')
            wait_for('Tab to leave %r' % here.get_name(),
                     lambda node=here: not window.has_focus(node))
        raise AssertionError('Tab never came to %s %r' % (role, name))

    @staticmethod
    def is_on(check):
        return check.get_state_set().contains(Atspi.StateType.CHECKED)

    def toggle(self, window, part):
        """By keys: the head may lie below the strip, which then scrolls."""
        check = self.tab_to(window, 'check box', part)
        before = self.is_on(check)
        window.key('space')
        wait_for(part + ' to change', lambda: self.is_on(check) != before)

    @staticmethod
    def entry(window, name):
        return window.get('text', name)

    def shown(self, window, name):
        return window.text(self.entry(window, name))

    def wait_shown(self, window, name, text):
        try:
            wait_for(name, lambda: self.shown(window, name) == text)
        except AssertionError:
            raise AssertionError('%s shows %r, not %r' % (
                name, self.shown(window, name), text)) from None

    def type_into(self, window, name, text, then='Return'):
        self.tab_to(window, 'text', name)
        window.key('ctrl+a')
        window.type(text)
        window.key(then)

    def sentence(self, window, part):
        return wait_for('a sentence with %r' % part, lambda: next(
            (node.get_name() for node in window.walk() if node.get_role_name() == 'label'
             and part in node.get_name() and window.box(node).height > 0), None))

    def saved(self, window):
        window.save(self.car)
        return json.loads(self.car.read_text())

    def load_at(self, travel, setup=None):
        """What the command line says the wheel carries there, N."""
        args = ['springs', self.car, '--from', travel, '--to', travel + 1, '--step', 1,
                '--format', 'csv']
        run = command(*args, *(['--setup', setup] if setup else []))
        assert run.returncode == 0, run.stderr
        row = next(csv.DictReader(io.StringIO(run.stdout)))
        return float(next(value for name, value in row.items() if 'load' in name))

    def corner_weight(self):
        return json.loads(self.car.read_text())['body']['front_mass_kg'] / 2 * G


class Parts(SpringsTest):
    def test_alt_4_and_back(self):
        window = self.open_page()
        self.assertEqual(window.state('question'), 'springs')
        window.key('alt+1')
        wait_for('the curves', lambda: window.state('question') == 'travel')

    def test_an_added_coil_carries_the_car_and_is_one_step(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        told = self.sentence(window, 'Added a coil')
        coil = self.saved(window)['springs']['coil']
        self.assertIn('%g N/mm' % coil['rate_n_per_mm'], told)
        self.assertIn('%g mm long' % coil['free_length_mm'], told)
        # a perch in hundredths of a millimetre leaves half of one at the coil's rate
        self.assertAlmostEqual(self.load_at(0), self.corner_weight(),
                               delta=0.005 * coil['rate_n_per_mm'] * 1.1)
        window.key('ctrl+z')
        wait_for('no coil', lambda: not self.is_on(window.get('check box', 'Coil')))
        self.assertFalse(window.is_enabled('undo'))
        self.assertNotIn('springs', self.saved(window))

    def test_a_part_taken_away_takes_its_numbers_along(self):
        window = self.open_page()
        self.toggle(window, 'Bump stop')
        self.toggle(window, 'Anti-roll bar')
        self.toggle(window, 'Bump stop')
        springs = self.saved(window)['springs']
        self.assertNotIn('bump_stop', springs)
        self.assertIn('anti_roll_bar', springs)

    def test_a_typed_number_is_stored_and_undone(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, RATE, '31.5')
        self.wait_shown(window, RATE, '31.5')
        self.assertEqual(self.saved(window)['springs']['coil']['rate_n_per_mm'], 31.5)
        window.key('ctrl+z')
        self.wait_shown(window, RATE, '25')
        self.assertEqual(self.saved(window)['springs']['coil']['rate_n_per_mm'], 25)

    def test_leaving_an_entry_stores_it(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, 'Coil: Free length', '333', then='Tab')
        self.assertEqual(self.saved(window)['springs']['coil']['free_length_mm'], 333)

    def test_sizes_say_their_rate(self):
        """G·π·d⁴/(32·L), Shigley's Mechanical Engineering Design, chapter 4 (from
        memory), with the shear modulus that the entry shows."""
        window = self.open_page()
        self.toggle(window, 'Torsion bar')
        self.type_into(window, 'Section 1, outer', '24')
        self.wait_shown(window, 'Section 1, outer', '24')
        length = float(self.shown(window, 'Section 1, length'))
        modulus = float(self.shown(window, 'Torsion bar: Shear modulus')) * 1000
        rate = modulus * math.pi * 24 ** 4 / (32 * length) * math.pi / 180 / 1000
        self.assertEqual(self.sentence(window, ' N·m/°'), '= %.2f N·m/°' % rate)

    def test_lengths_of_a_bar_come_and_go(self):
        window = self.open_page()
        self.toggle(window, 'Torsion bar')
        self.tab_to(window, 'push button', 'Add Length')
        window.key('space')
        self.type_into(window, 'Section 2, length', '150')
        sections = self.saved(window)['springs']['torsion_bar']['sections']
        self.assertEqual([s['length_mm'] for s in sections], [900, 150])
        self.tab_to(window, 'push button', 'Remove section 1')
        window.key('space')
        self.wait_shown(window, 'Section 1, length', '150')
        self.assertEqual(len(self.saved(window)['springs']['torsion_bar']['sections']), 1)

    def test_another_alternative_asks_for_other_numbers(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.tab_to(window, 'push button', 'Coil by')
        window.key('space', 'Down', 'Return')
        wire = self.entry(window, 'Coil: Wire')
        wait_for('the wire', lambda: window.box(wire).height > 0)
        self.assertIn('solid at', self.sentence(window, '= 25.0'))
        coil = self.saved(window)['springs']['coil']
        self.assertNotIn('rate_n_per_mm', coil)
        self.assertEqual(coil['wire_mm'], float(window.text(wire)))

    def test_a_law_is_typed_in_one_line(self):
        window = self.open_page()
        self.type_into(window, 'Damper’s law', '-0.3 -900; 0 0; 0.3 450')
        self.wait_shown(window, 'Damper’s law', '-0.3 -900; 0 0; 0.3 450')
        self.assertEqual(self.saved(window)['springs']['damper']['table'],
                         [[-0.3, -900], [0, 0], [0.3, 450]])


class Sight(SpringsTest):
    def test_a_part_that_is_ticked_stays_in_sight(self):
        """With its columns it goes to a line of its own, below what is seen."""
        window = self.open(DATA / 'dunnock.swcar', title='Dunnock 1.4 sports coupé')
        sh('xdotool', 'windowsize', window.win, 1280, 800)
        window.key('alt+4')
        check = window.get('check box', 'Coil')
        tab = window.get('page tab', 'What It Stands On')
        frame = window.get('frame')

        def is_seen():
            head, above = window.box(check), window.box(tab)
            return (head.y >= above.y + above.height
                    and head.y + head.height <= window.box(frame).height)
        wait_for('the editor', lambda: window.box(check).height > 0 and is_seen())
        time.sleep(0.3)  # until the window has settled
        for is_on in True, False:
            window.click(check, 8)
            wait_for('its tick', lambda on=is_on: self.is_on(check) == on)
            time.sleep(0.2)
            wait_for('its head', is_seen)


class Refusals(SpringsTest):
    def is_marked(self, window, name):
        states = self.entry(window, name).get_state_set()
        return states.contains(Atspi.StateType.INVALID)

    def test_wrong_text_stays_with_its_sentence_until_escape(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, RATE, 'stiff', then='Tab')
        self.assertEqual(self.sentence(window, 'stiff'),
                         '“Coil: Rate” holds “stiff”, which is no number: '
                         '“stiff” was not understood.')
        self.assertEqual(self.shown(window, RATE), 'stiff')
        self.assertEqual(self.saved(window)['springs']['coil']['rate_n_per_mm'], 25)
        self.tab_to(window, 'text', RATE)
        window.key('Escape')
        self.wait_shown(window, RATE, '25')
        wait_for('no sentence', lambda: not any(
            'stiff' in node.get_name() for node in window.walk()))

    @staticmethod
    def related(node, kind):
        return [relation.get_target(i) for relation in node.get_relation_set()
                if relation.get_relation_type() == kind
                for i in range(relation.get_n_targets())]

    def test_a_refusal_stands_below_its_entry_and_belongs_to_it(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, RATE, 'stiff')
        self.sentence(window, 'stiff')
        entry = self.entry(window, RATE)
        line, = self.related(entry, Atspi.RelationType.DESCRIBED_BY)
        self.assertIn('stiff', line.get_name())
        above, below = window.box(entry), window.box(line)
        self.assertLess(0, below.y - above.y - above.height + 1)
        self.assertLess(below.y - above.y - above.height, 10)
        self.assertLess(below.x, above.x + above.width)
        self.assertLess(above.x, below.x + below.width)
        self.type_into(window, RATE, '30')
        wait_for('no sentence', lambda: not self.related(
            entry, Atspi.RelationType.DESCRIBED_BY))

    def test_a_refused_text_never_comes_back_unmarked(self):
        """Undo in the entry takes it back, and after Escape does not bring it again."""
        name = 'Damper’s law'
        window = self.open_page()
        for take_back in 'ctrl+z', 'Escape':
            self.type_into(window, name, 'stiff')
            wait_for('the mark', lambda: self.is_marked(window, name))
            window.key(take_back)
            self.wait_shown(window, name, '')
            wait_for('no mark', lambda: not self.is_marked(window, name))
            window.key('ctrl+z')
            time.sleep(0.2)
            self.assertEqual(self.shown(window, name), '')

    def test_what_the_file_refuses_is_told_by_the_names_of_entries(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, 'Coil: Solid length', '400')
        told = self.sentence(window, 'solid length')
        self.assertIn('“Coil: Free length”', told)
        self.assertNotIn('_mm', told)
        self.assertEqual(self.shown(window, 'Coil: Solid length'), '400')
        self.assertNotIn('solid_length_mm', self.saved(window)['springs']['coil'])

    def test_a_rate_of_nothing_is_refused(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, RATE, '0')
        self.sentence(window, '“Coil: Rate” must be above 0.')
        self.type_into(window, RATE, ' ')
        self.sentence(window, '“Coil: Rate” needs a number.')

    def test_a_law_that_does_not_rise_is_refused(self):
        window = self.open_page()
        self.type_into(window, 'Damper’s law', '0 0; 0.3 450; 0.2 500')
        self.assertIn('0.2 does not follow 0.3', self.sentence(window, 'must rise'))
        self.assertFalse(window.is_enabled('undo'))


class Owners(SpringsTest):
    def is_open(self, window, name):
        return self.entry(window, name).get_state_set().contains(Atspi.StateType.SENSITIVE)

    def test_a_setup_stands_as_the_car_until_it_has_its_own(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        window.pick(OTHER)
        wait_for('entries that only show', lambda: not self.is_open(window, RATE))
        self.assertEqual(self.shown(window, RATE), '25')
        self.tab_to(window, 'push button', 'Give This Setup Its Own')
        window.key('space')
        wait_for('entries', lambda: self.is_open(window, RATE))
        self.type_into(window, RATE, '40')
        car = self.saved(window)
        setup = next(s for s in car['setups'] if s['name'] == OTHER)
        self.assertEqual(setup['springs']['coil']['rate_n_per_mm'], 40)
        self.assertEqual(car['springs']['coil']['rate_n_per_mm'], 25)
        self.tab_to(window, 'push button', 'Stand as the Car')
        window.key('space')
        self.wait_shown(window, RATE, '25')
        self.assertNotIn('springs', next(s for s in self.saved(window)['setups']
                                         if s['name'] == OTHER))

    def test_a_rod_of_its_own(self):
        window = self.open_page()
        window.pick(OTHER)
        self.tab_to(window, 'push button', 'Give It Its Own Rod')
        window.key('space')
        self.sentence(window, 'Its own rod')
        self.toggle(window, 'Rod')
        self.type_into(window, 'Rod: Bore', '12')
        setup = next(s for s in self.saved(window)['setups'] if s['name'] == OTHER)
        self.assertEqual((setup['rod']['diameter_mm'], setup['rod']['bore_mm']), (20, 12))
        self.assertNotIn('springs', setup)

    def test_what_was_refused_stays_with_its_setup(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, RATE, 'stiff')
        window.pick(OTHER)
        self.wait_shown(window, RATE, '25')


class Height(SpringsTest):
    def is_live(self, window, name):
        return window.get('push button', name).get_state_set().contains(
            Atspi.StateType.SENSITIVE)

    def test_the_perch_that_stands_at_the_lowering(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        stood = float(self.shown(window, PERCH))
        self.assertFalse(self.is_live(window, BY_PERCH))
        window.enter(window.get('spin button', 'Lowered by'), '20')
        wait_for('the button', lambda: self.is_live(window, BY_PERCH))
        window.click(window.get('push button', BY_PERCH))
        wait_for('another perch', lambda: float(self.shown(window, PERCH)) < stood - 5)
        self.saved(window)
        self.assertAlmostEqual(self.load_at(20), self.corner_weight(), delta=0.2)
        self.assertFalse(self.is_live(window, BY_PERCH))

    def test_the_clamp_angle_that_stands_at_it(self):
        window = self.open_page()
        self.toggle(window, 'Torsion bar')
        self.type_into(window, CLAMP, '5')
        wait_for('the button', lambda: self.is_live(window, BY_ANGLE))
        window.click(window.get('push button', BY_ANGLE))
        wait_for('another angle', lambda: float(self.shown(window, CLAMP)) > 6)
        self.saved(window)
        # half a hundredth of a degree at some 35 N·m/° and an arm of 0.3 m
        self.assertAlmostEqual(self.load_at(0), self.corner_weight(), delta=0.8)

    def test_a_perch_that_cannot_is_told(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, 'Coil: Solid length', '320')
        self.sentence(window, 'No perch does it')
        self.assertFalse(self.is_live(window, BY_PERCH))


class Drags(SpringsTest):
    def scale(self, window):
        scale = window.get('slider', PERCH)
        wait_for('the scale', lambda: window.box(scale).width > 50)
        return scale

    def drag(self, window, by, keep=()):
        scale = self.scale(window)
        box = window.box(scale)
        x, y = box.width / 2, box.height / 2
        window.moves(scale, (x, y), (x + by / 2, y), (x + by, y), before_release=keep)

    def test_a_drag_is_live_and_one_step(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        before = self.shown(window, PERCH)
        self.drag(window, 40)
        wait_for('another perch', lambda: self.shown(window, PERCH) != before)
        window.key('ctrl+z')
        self.wait_shown(window, PERCH, before)
        window.key('ctrl+z')
        wait_for('no coil', lambda: not window.is_enabled('undo'))

    def test_escape_in_the_drag_changes_nothing(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        before = self.shown(window, PERCH)
        self.drag(window, 40, keep=['Escape'])
        self.wait_shown(window, PERCH, before)
        window.key('ctrl+z')
        wait_for('no coil', lambda: not window.is_enabled('undo'))

    def test_arrows_and_the_wheel_step(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        self.type_into(window, PERCH, '150')
        for key, text in (('Up', '150.5'), ('Down', '150'), ('Page_Up', '155')):
            window.key(key)
            self.wait_shown(window, PERCH, text)
        entry = self.entry(window, PERCH)
        window.scroll(entry, 20, 10, -2)
        self.wait_shown(window, PERCH, '154')

    def test_the_wheel_leaves_a_number_alone_that_has_no_focus(self):
        window = self.open_page()
        self.toggle(window, 'Coil')
        before = self.shown(window, PERCH)
        window.scroll(self.entry(window, PERCH), 20, 10, 2)
        window.scroll(self.scale(window), 20, 5, 2)
        time.sleep(0.3)
        self.assertEqual(self.shown(window, PERCH), before)


class SmallWindow(SpringsTest):
    def test_all_is_reached_at_1024_by_640(self):
        window = self.open_page()
        for part in ('Coil', 'Rod'):
            self.toggle(window, part)
        frame = window.get('frame')
        sh('xdotool', 'windowsize', window.win, 1024, 640)
        wait_for('the size', lambda: window.box(frame).width <= 1024
                 and window.box(frame).height <= 640)
        whole = window.box(frame)
        board = window.box(window.get('image', BOARD))  # scrolled, from its top
        self.assertLess(board.y, 200)
        self.assertLessEqual(board.x + board.width, whole.width)
        for role, name in (('page tab', 'Numbers'), ('page tab', 'What It Stands On')):
            self.assert_inside(window, window.get(role, name), whole)
        for role, name in (('text', 'Rod: Friction'), ('check box', 'Torsion bar'),
                           ('text', 'Coil: Perch')):
            node = self.tab_to(window, role, name)
            wait_for(name + ' scrolled to', lambda: self.is_inside(window, node, whole))

    @staticmethod
    def is_inside(window, node, whole):
        box = window.box(node)
        return (box.width > 10 and box.x >= 0 and box.y >= 0
                and box.x + box.width <= whole.width
                and box.y + box.height <= whole.height)

    def assert_inside(self, window, node, whole):
        self.assertTrue(self.is_inside(window, node, whole), node.get_name())


class Names(SpringsTest):
    def test_every_entry_has_one_of_its_own(self):
        window = self.open_page()
        for part in ('Torsion bar', 'Coil', 'Helper', 'Bump stop', 'Anti-roll bar', 'Rod'):
            self.toggle(window, part)
        names = [node.get_name() for node in window.walk()
                 if node.get_role_name() == 'text' and window.box(node).height > 0]
        self.assertGreater(len(names), 25)
        self.assertEqual(len(names), len(set(names)))
        self.assertNotIn('', names)


if __name__ == '__main__':
    main()
