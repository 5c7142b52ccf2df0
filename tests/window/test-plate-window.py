# SPDX-License-Identifier: GPL-3.0-or-later
"""The dialog for plates: made by keys alone, changed, copied, refused, deleted."""
import json
import os
import subprocess

from form_dialog import FormTest
from gtkdrive import wait_for
from strutwright_window import DATA, WREN, Window, main

NEW_PLATE, CHANGE_PLATE = 'New Plate', 'Change Plate'
SLOT = 'Sliding camber plate'
TURNED, HOLES = 3, 4  # in the list of kinds


class Editor(FormTest):
    def setUp(self):
        super().setUp()
        self.own = self.data / 'strutwright' / 'plates'

    def own_plate(self, file, **members):
        self.own.mkdir(parents=True, exist_ok=True)
        plate = {'format': 'strutwright-plate', 'version': 1, 'notes': '', **members}
        (self.own / (file + '.swplate')).write_text(json.dumps(plate))

    def open_mount(self):
        window = self.open()
        window.key('alt+3')
        wait_for('the plates', lambda: window.find('push button', 'Plate'))
        return window

    def shown_items(self, window):
        return [node for node in window.walk()
                if node.get_role_name() in ('menu item', 'radio menu item',
                                            'check menu item')
                and window.box(node).width > 0]

    def menu_of_plates(self, window):
        button = wait_for('the button', lambda: next(
            (node for node in window.walk() if node.get_role_name() == 'push button'
             and node.get_name() == 'Plate' and window.box(node).width > 0), None))
        window.click(button)
        return wait_for('the menu', lambda: self.shown_items(window))

    def choose(self, window, name):
        for item in self.menu_of_plates(window):
            if item.get_name() == name:
                return window.press(item)
        raise AssertionError('no %r in the menu' % name)

    def plate_in_hand(self, window):
        return window.get('push button', 'Plate').get_description()

    def read(self, file):
        path = self.own / (file + '.swplate')
        wait_for('the file', path.exists)
        return json.loads(path.read_text())


class MakePlate(Editor):
    def open_new(self):
        window = self.open_mount()
        self.choose(window, 'New Plate…')
        return window, self.dialog(window, NEW_PLATE)

    def test_a_slot_by_keys_alone(self):
        window, dialog = self.open_new()
        self.sentence(window, '^Give the plate a name')
        self.assertFalse(self.is_on(window, 'Save'))
        self.type_into(window, 'text', 'Name', 'Shop slot 25')
        for name, text in (('Inboard', '-3.25'), ('Rearward', '4'), ('Direction', '30'),
                           ('Scale', '-5'), ('Scale, up to', '20'),
                           ('Raises the bearing', '6'), ('Bearing diameter', '58')):
            self.type_into(window, 'spin button', name, text)
        window.key('Return')
        window.wait_gone(dialog)
        plate = self.read('shop-slot-25')
        self.assertEqual(plate['name'], 'Shop slot 25')
        self.assertEqual(plate['kind'], 'slot')
        self.assertEqual((plate['inboard_mm'], plate['rearward_mm']), (-3.25, 4))
        self.assertEqual(plate['direction_deg'], 30)
        self.assertEqual(plate['along_mm'], [-5, 20])
        self.assertEqual((plate['raises_mm'], plate['bearing_diameter_mm']), (6, 58))
        self.assertNotIn('swap_turn_deg', plate)
        wait_for('it in hand', lambda: self.plate_in_hand(window) == 'Shop slot 25')

    def test_the_drawing_tells_where_it_goes_at_every_key(self):
        window, _ = self.open_new()
        drawing = self.node(window, 'image', 'Where the plate can put the bearing, in plan')
        self.type_into(window, 'spin button', 'Direction', '90')
        self.type_into(window, 'spin button', 'Scale, up to', '12')
        wait_for('the ends', lambda: drawing.get_description().endswith(
            '12.0 mm on the scale: 0.0 mm inboard, 12.0 mm rearward'))
        window.key('Escape')

    def choose_kind(self, window, place):
        self.tab_to(window, 'push button', 'Kind')
        window.key('space')
        wait_for('the list', lambda: any(
            node.get_role_name() == 'list item' and window.has_focus(node)
            for node in window.walk(self.form)))
        window.key('Home', *['Down'] * place, 'Return')
        self.tab_to(window, 'push button', 'Kind')

    def test_holes_are_added_removed_and_named(self):
        window, dialog = self.open_new()
        window.type('Four bolts')
        self.choose_kind(window, HOLES)
        self.type_into(window, 'text', 'Mark of hole 1', 'A')
        self.tab_to(window, 'push button', 'Add Hole')
        window.key('space')
        window.type('A')
        self.sentence(window, '^“Mark of hole 2” is the same as “Mark of hole 1”')
        self.assertTrue(self.is_marked(self.node(window, 'text', 'Mark of hole 2')))
        window.key('ctrl+a')
        window.type('B')
        self.tab_to(window, 'push button', 'Add Hole')
        window.key('space')
        self.tab_to(window, 'push button', 'Remove hole 2')
        window.key('space')
        self.type_into(window, 'spin button', 'Hole 2, rearward', '7,5')
        self.sentence(window, '^“Hole 2, rearward” holds “7,5”, which is no number here')
        self.assertFalse(self.is_on(window, 'Save'))
        self.type_into(window, 'spin button', 'Hole 2, rearward', '7.5')
        window.key('Return')
        window.wait_gone(dialog)
        self.assertEqual(self.read('four-bolts')['holes'], [
            {'label': 'A', 'inboard_mm': 0, 'rearward_mm': 0},
            {'label': '3', 'inboard_mm': 20, 'rearward_mm': 7.5}])

    def test_indexed_turns_are_put_in_order(self):
        window, dialog = self.open_new()
        window.type('Bush')
        self.choose_kind(window, TURNED)
        self.tab_to(window, 'check box', 'Any turn')
        window.key('Down')  # to the other of the two
        self.sentence(window, '^Enter the turns at which it locks')
        self.type_into(window, 'text', 'Indexed turns in degrees', '90, x')
        self.sentence(window, '^The indexed turns must be numbers')
        self.type_into(window, 'text', 'Indexed turns in degrees', '90, 0 270,180')
        self.type_into(window, 'spin button', 'Radius', '0')
        self.sentence(window, '^“Radius” is 0, but must be above 0')
        self.assertTrue(self.is_marked(self.node(window, 'spin button', 'Radius')))
        self.assertFalse(self.is_on(window, 'Save'))
        self.type_into(window, 'spin button', 'Radius', '4.5')
        wait_for('no mark', lambda: not self.is_marked(
            self.node(window, 'spin button', 'Radius')))
        window.key('Return')
        window.wait_gone(dialog)
        plate = self.read('bush')
        self.assertEqual(plate['turns_deg'], [0, 90, 180, 270])
        self.assertEqual(plate['radius_mm'], 4.5)
        self.assertNotIn('turn_range_deg', plate)

    def test_what_is_typed_is_never_swapped_for_something_else(self):
        window, dialog = self.open_new()
        window.type('Far')
        for text, sentence in (('4x', '^“Inboard” holds “4x”, which is no number'),
                               ('4,5', 'holds “4,5”, which is no number here; write “4.5”'),
                               ('500', '^“Inboard” is 500, but must lie between')):
            self.type_into(window, 'spin button', 'Inboard', text)
            self.sentence(window, sentence)
            self.assertTrue(self.is_marked(self.node(window, 'spin button', 'Inboard')))
            window.key('Return')
            self.sentence(window, sentence)
        self.tab_to(window, 'spin button', 'Rearward')  # beyond its bounds it stays, too
        self.sentence(window, sentence)
        self.assertTrue(self.is_marked(self.node(window, 'spin button', 'Inboard')))
        self.type_into(window, 'spin button', 'Inboard', '5.0625')
        window.key('Return')
        window.wait_gone(dialog)
        self.assertEqual(self.read('far')['inboard_mm'], 5.0625)

    def test_a_scale_that_ends_before_it_begins(self):
        window, _ = self.open_new()
        window.type('Odd')
        self.type_into(window, 'spin button', 'Scale', '30')
        self.sentence(window, '^“Scale” must be below “Scale, up to”')
        self.assertFalse(self.is_on(window, 'Save'))
        window.key('Escape')

    def test_a_name_is_given_once(self):
        self.own_plate('mine', name='Mine', kind='fixed', inboard_mm=1, rearward_mm=0)
        window, _ = self.open_new()
        window.type('Mine')
        self.sentence(window, '^You have another plate of this name already')
        self.assertTrue(self.is_marked(self.node(window, 'text', 'Name')))
        self.assertFalse(self.is_on(window, 'Save'))
        window.key('Escape')

    def test_escape_leaves_nothing(self):
        window, dialog = self.open_new()
        window.type('Nothing')
        window.key('Escape')
        window.wait_gone(dialog)
        self.assertEqual(list(self.own.glob('*')), [])


class ChangePlate(Editor):
    def edit(self, window, plate, title):
        self.choose(window, plate)
        wait_for(plate + ' in hand', lambda: self.plate_in_hand(window) == plate)
        self.choose(window, 'Edit Plate…')
        return self.dialog(window, title)

    def test_a_plate_of_the_program_is_copied(self):
        window = self.open_mount()
        dialog = self.edit(window, SLOT, NEW_PLATE)
        self.assertIsNone(window.find('push button', 'Delete Plate…', self.form))
        window.key('Return')
        window.wait_gone(dialog)
        copy = self.read('copy-of-sliding-camber-plate')
        was = json.loads((DATA / 'plates' / 'sliding-camber-plate.swplate').read_text())
        self.assertEqual(copy, {**was, 'name': 'Copy of ' + SLOT})
        wait_for('it in hand', lambda: self.plate_in_hand(window) == 'Copy of ' + SLOT)

    def test_own_plates_are_saved_over(self):
        self.own_plate('mine', name='Mine', kind='fixed', inboard_mm=1.125, rearward_mm=0,
                       maker={'a member': 'not known here'})
        window = self.open_mount()
        dialog = self.edit(window, 'Mine', CHANGE_PLATE)
        self.type_into(window, 'text', 'Name', 'Still mine')
        self.type_into(window, 'spin button', 'Rearward', '8')
        self.tab_to(window, 'check box', 'Sides may be swapped, turned by')
        window.key('space')
        window.key('Tab')
        window.key('Return')
        window.wait_gone(dialog)
        self.assertEqual([path.name for path in self.own.iterdir()], ['mine.swplate'])
        plate = self.read('mine')
        self.assertEqual(plate['name'], 'Still mine')
        self.assertEqual((plate['inboard_mm'], plate['rearward_mm']), (1.125, 8))
        self.assertEqual(plate['swap_turn_deg'], -90)
        self.assertEqual(plate['maker'], {'a member': 'not known here'})

    def test_own_plates_are_deleted_when_asked_twice(self):
        self.own_plate('mine', name='Mine', kind='fixed', inboard_mm=1, rearward_mm=0)
        window = self.open_mount()
        dialog = self.edit(window, 'Mine', CHANGE_PLATE)
        with window.inside(dialog, CHANGE_PLATE):
            delete = self.node(window, 'push button', 'Delete Plate…')
            window.click(delete)
            question = window.wait_other_window(dialog)
            window.key('Escape')
            window.wait_gone(question)
            wait_for('the keys', lambda: window.active() == dialog)
            self.assertTrue((self.own / 'mine.swplate').exists())
            window.click(delete)
            window.wait_other_window(dialog)
            window.press(window.get('push button', 'Delete'))
            window.wait_gone(dialog)
        self.assertEqual(list(self.own.iterdir()), [])
        wait_for('no plate in hand', lambda: self.plate_in_hand(window) == 'No plate')


class Behind(Window):
    """The demo car's window, where the keys are a dialog's from the start."""

    has_started = False

    def __init__(self, *args):
        super().__init__(*args)
        self.has_started = True

    def active(self):
        return super().active() if self.has_started else self.win


class OpenPlate(Editor):
    """Named on the command line, as a double click in a file manager does it."""

    def plate_file(self, name='from-a-friend.swplate', **members):
        path = self.folder / 'elsewhere' / name
        path.parent.mkdir(exist_ok=True)
        plate = {'format': 'strutwright-plate', 'version': 1, 'name': 'From a friend',
                 'kind': 'fixed', 'inboard_mm': 7, 'rearward_mm': 3, **members}
        path.write_text(json.dumps(plate))
        return path

    def test_it_stands_in_the_editor_and_is_kept_among_the_own(self):
        path = self.plate_file()
        before = path.read_bytes()
        window = self.keep(Behind(path))
        dialog = self.dialog(window, NEW_PLATE)
        self.assertEqual(window.text(self.node(window, 'text', 'Name')), 'From a friend')
        self.assertEqual(window.value(self.node(window, 'spin button', 'Inboard')), 7)
        window.key('Return')
        window.wait_gone(dialog)
        self.assertEqual(self.read('from-a-friend')['rearward_mm'], 3)
        self.assertEqual(path.read_bytes(), before)
        self.assertEqual(window.state('question'), 'mount')
        wait_for('it in hand', lambda: self.plate_in_hand(window) == 'From a friend')

    def test_an_own_plate_is_changed_where_it_lies(self):
        self.own_plate('mine', name='Mine', kind='fixed', inboard_mm=1, rearward_mm=0)
        window = self.keep(Behind(self.own / 'mine.swplate'))
        dialog = self.dialog(window, CHANGE_PLATE)
        self.type_into(window, 'spin button', 'Inboard', '2.5')
        window.key('Return')
        window.wait_gone(dialog)
        self.assertEqual([path.name for path in self.own.iterdir()], ['mine.swplate'])
        self.assertEqual(self.read('mine')['inboard_mm'], 2.5)

    def test_a_plate_of_the_program_is_copied(self):
        window = self.keep(Behind(DATA / 'plates' / 'stock-mount.swplate'))
        dialog = self.dialog(window, NEW_PLATE)
        self.assertEqual(window.text(self.node(window, 'text', 'Name')),
                         'Copy of Stock mount')
        window.key('Escape')
        window.wait_gone(dialog)

    def test_it_is_looked_at_on_the_car_that_is_open(self):
        window = self.open()
        subprocess.run([os.environ['STRUTWRIGHT_WINDOW'], self.plate_file()], timeout=60,
                       check=True)
        dialog = self.dialog(window, NEW_PLATE)
        window.key('Return')
        window.wait_gone(dialog)
        wait_for('it in hand', lambda: self.plate_in_hand(window) == 'From a friend')
        frames = [node for node in window.walk() if node.get_role_name() == 'frame']
        self.assertEqual([frame.get_name() for frame in frames], [WREN])

    def test_what_cannot_be_read_is_refused_in_one_sentence(self):
        window = self.open(self.plate_file(kind='magic'))
        text = wait_for('a sentence', window.message)
        self.assertRegex(text, r'from-a-friend\.swplate was not opened\. .*kind')
        self.assertEqual(text.count('was not opened'), 1)
        self.assertEqual(window.state('question'), 'travel')

    def test_what_is_not_there_is_refused_in_one_sentence(self):
        window = self.open(self.folder / 'gone.swplate')
        self.assertIn('gone.swplate was not opened', wait_for('it', window.message))


if __name__ == '__main__':
    main()
