# SPDX-License-Identifier: GPL-3.0-or-later
"""What a screen reader is told, and that nothing is cut off in a small window."""
import re

from gtkdrive import Atspi, sh, wait_for
from strutwright_window import (CURVES, FRONT_MOUNT, FRONT_WHEEL, NUMBERS, TRAVEL,
                                WindowTest, main)

CONTROLS = {'push button', 'spin button', 'slider', 'combo box', 'check box', 'page tab',
            'page tab list', 'image', 'text', 'toggle button', 'menu item', 'frame'}
CLASS_NAME = re.compile(r'^(Gtk|Sw)[A-Z]')


def is_toolkit_inside(node):
    """Parts that GTK builds into a control which has its name: never met by themselves."""
    parent = node.get_parent()
    while parent is not None:
        if parent.get_role_name() in ('combo box', 'push button', 'scroll bar'):
            return True
        parent = parent.get_parent()
    return False


class Names(WindowTest):
    def nameless(self, window):
        return ['%s %r' % (node.get_role_name(), node.get_name())
                for node in window.walk()
                if node.get_role_name() in CONTROLS and not is_toolkit_inside(node)
                and (not node.get_name() or CLASS_NAME.match(node.get_name())
                     or '_' in node.get_name() or self.is_said_twice(node.get_name()))]

    @staticmethod
    def is_said_twice(name):
        words = name.split()
        return len(words) > 1 and words[:len(words) // 2] == words[len(words) // 2:]

    def shown_labels_by_class(self, window):
        return [node.get_name() for node in window.walk()
                if node.get_role_name() == 'label' and CLASS_NAME.match(node.get_name())
                and window.box(node).height > 0]

    def test_every_control_has_a_name(self):
        window = self.open()
        self.assertEqual(self.nameless(window), [])
        self.assertEqual(self.shown_labels_by_class(window), [])

    def test_names_in_the_export_window(self):
        window = self.open()
        window.key('ctrl+e')
        window.wait_other_window()
        window.get('push button', 'Save…')
        self.assertEqual(self.nameless(window), [])
        self.assertEqual(self.shown_labels_by_class(window), [])

    def test_names_of_corrections_and_of_the_answers(self):
        window = self.open()
        window.tab_to('push button', 'Corrections')
        window.key('space')
        window.get('spin button', 'Ball-joint spacer')
        self.assertEqual(self.nameless(window), [])
        window.enter(window.get('spin button', 'Inboard'), '3')
        window.wait_mount(3.0)
        window.key('ctrl+w')
        window.wait_other_window()
        window.get('push button', 'Discard')
        self.assertEqual(self.nameless(window), [])

    def test_names_in_the_curve_picker(self):
        window = self.open()
        window.click(window.get('push button', 'Curves'))
        check = window.get('check box', 'Camber gain')
        self.assertTrue(check.get_description())
        self.assertEqual(self.nameless(window), [])

    def test_names_on_the_springs_page(self):
        window = self.open()
        window.key('alt+4')
        for part in ('Torsion bar', 'Coil', 'Helper', 'Bump stop', 'Anti-roll bar', 'Rod'):
            check = window.tab_to('check box', part, most=120)
            if check.get_state_set().contains(Atspi.StateType.CHECKED):
                continue  # the demo car has it
            window.key('space')
            wait_for(part, lambda node=check: node.get_state_set().contains(
                Atspi.StateType.CHECKED))
        self.assertEqual(self.nameless(window), [])
        self.assertEqual(self.shown_labels_by_class(window), [])

    def test_names_on_the_mount_page_and_in_its_panels(self):
        window = self.open()
        window.key('alt+3')
        window.handle('Upper mount, map')
        wait_for('the answers', lambda: any(
            node.get_role_name() == 'table row' and node.get_description()
            for node in window.walk()))
        self.assertEqual(self.nameless(window), [])
        self.assertEqual(self.shown_labels_by_class(window), [])
        for button, part in (('Lines', ('combo box', 'Full lines')),
                             ('Aims', ('spin button', 'Camber, at least'))):
            window.click(window.get('push button', button))
            window.get(*part)
            self.assertEqual(self.nameless(window), [])
            window.key('Escape')

    def test_controls_have_the_roles_and_values(self):
        window = self.open()
        self.assertEqual(window.travel(), 0.0)
        scale = window.get('slider', TRAVEL).get_value_iface()
        self.assertEqual((scale.get_minimum_value(), scale.get_maximum_value()),
                         (-80.0, 80.0))
        # GTK 4.8 passes on the values of its own widgets alone, so handles use words
        self.assertEqual(window.handle(FRONT_MOUNT).get_description(),
                         'mount as measured')
        self.assertEqual(window.handle(FRONT_WHEEL).get_description(), '0.0 mm')
        window.click(window.handle(FRONT_MOUNT))
        window.key('shift+Left')
        wait_for('words', lambda: window.handle(FRONT_MOUNT).get_description()
                 == '5.0 mm inboard')


class SmallWindow(WindowTest):
    SIZE = 1024, 640

    def test_nothing_is_cut_off_or_lies_on_another(self):
        window = self.open()
        sh('xdotool', 'windowsize', window.win, *self.SIZE)
        frame = window.get('frame')
        wait_for('the size', lambda: window.box(frame).width <= self.SIZE[0])
        whole = window.box(frame)
        self.assertLessEqual((whole.width, whole.height), self.SIZE)

        nodes = [node for node in window.walk(frame) if self.counts(window, node)]
        boxes = [(node.get_name(), window.box(node)) for node in nodes]
        below = {node.get_name() for node in nodes if self.scrolls(node)}
        self.assertGreater(len(boxes), 20)
        for name, box in boxes:
            self.assertGreaterEqual(min(box.x, box.y + 1), 0, name)
            self.assertLessEqual(box.x + box.width, whole.width, name)
            if name not in below:
                self.assertLessEqual(box.y + box.height, whole.height, name)
        for i, (name, box) in enumerate(boxes):
            for other_name, other in boxes[i + 1:]:
                overlap = (min(box.x + box.width, other.x + other.width)
                           > max(box.x, other.x)
                           and min(box.y + box.height, other.y + other.height)
                           > max(box.y, other.y))
                if NUMBERS not in (name, other_name):
                    self.assertFalse(overlap, '%s and %s' % (name, other_name))

    @staticmethod
    def scrolls(node):
        """The table and the panel of the setup scroll: they go on below the edge.

        The outermost scroll pane holds the whole window, which has room for it here.
        """
        parent, panes = node.get_parent(), 0
        while parent is not None:
            panes += parent.get_role_name() == 'scroll pane'
            parent = parent.get_parent()
        return panes > 1

    @staticmethod
    def counts(window, node):
        """Controls themselves: not their parts, nor the handles, which lie on the sheet."""
        return (node.get_role_name() in CONTROLS - {'frame'}
                and not is_toolkit_inside(node)
                and node.get_role_name() != 'page tab list'
                and not node.get_name().startswith(('Upper mount', 'Wheel travel, '))
                and node.get_state_set().contains(Atspi.StateType.VISIBLE)
                and window.box(node).height > 0 and node.get_name() != 'Dismiss')

    def test_drawings_keep_a_size_to_work_on(self):
        window = self.open()
        sh('xdotool', 'windowsize', window.win, *self.SIZE)
        wait_for('the size', lambda: window.box(window.get('frame')).width <= 1024)
        for role, name, width, height in (
                ('panel', 'Sheet: front, side and plan view of the corner', 340, 260),
                ('image', CURVES, 360, 260)):
            box = window.box(window.get(role, name))
            self.assertGreaterEqual(box.width, width, name)
            self.assertGreaterEqual(box.height, height, name)


if __name__ == '__main__':
    main()
