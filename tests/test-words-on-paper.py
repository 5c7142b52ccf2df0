#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the programs draw and print: every word from a catalogue, and none cut.

Needs gettext's tools and pdftotext, and in the environment STRUTWRIGHT, the command line,
STRUTWRIGHT_LOCALEDIR, the built translations, and STRUTWRIGHT_DATADIR.
"""
import os
import re
import tempfile
import unittest
from pathlib import Path

import pseudo_locale
from catalogue import LANGUAGES, ROOT, run, text_of
from pseudo_locale import is_part, plain_words

VIEWS = 'curves', 'sheet', 'lowering', 'mount', 'springs', 'loads'
DUNNOCK = ROOT / 'data/dunnock.swcar'
FIELDFARE = ROOT / 'data/fieldfare.swcar'
# For people. A key before a warning, the name of the program and of a file stay.
PRINTED = (('check',), ('compare',), ('choose',), ('springs',), ('loads',),
           ('restore', '--setup', 'Coil instead of the bar'))
KEY = re.compile(r'^(strutwright|[a-z-]+): |\S+\.swcar')


class Paper(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.folder = Path(place.name)

    def drawings(self, car, **environment):
        """Each that the command line can draw, as (what, its text)."""
        page = self.folder / 'page.pdf'
        runs = [(view, ('plot', car, '--view', view, '--output', page)) for view in VIEWS]
        runs += [('report', ('report', car, '--output', page)),
                 ('guide', ('guide', car, '--output', page)),
                 ('card', ('choose', car, '--card', page))]
        for what, words in runs:
            page.unlink(missing_ok=True)
            done = run(os.environ['STRUTWRIGHT'], *words, **environment)
            if what in ('springs', 'loads') and '"springs"' not in car.read_text():
                continue
            self.assertEqual(done.returncode, 0, '%s: %s' % (what, done.stderr))
            yield what, text_of('pdftotext', '-layout', page, '-')

    def assert_marked(self, what, text, own, least):
        self.assertGreaterEqual(text.count('⟦'), least, what)
        bare = [re.sub(r'\s{2,}', '\n', KEY.sub('', line)) for line in text.splitlines()]
        found = [part for line in bare for part in line.split('\n')
                 if plain_words(part, own)]
        self.assertEqual(found, [], what)

    def test_no_drawing_has_a_word_of_its_own(self):
        pseudo_locale.build(self.folder)
        for car in (DUNNOCK, FIELDFARE):
            own = pseudo_locale.own_texts(car)
            for what, text in self.drawings(car, LANGUAGE=pseudo_locale.LANGUAGE,
                                            STRUTWRIGHT_LOCALEDIR=str(self.folder)):
                with self.subTest(what, car=car.stem):
                    self.assert_marked(what, text, own, 10)

    def test_no_sentence_is_printed_unmarked(self):
        pseudo_locale.build(self.folder)
        own = pseudo_locale.own_texts(DUNNOCK)
        for command, *options in PRINTED:
            with self.subTest(command):
                done = run(os.environ['STRUTWRIGHT'], command, DUNNOCK, *options,
                           LANGUAGE=pseudo_locale.LANGUAGE,
                           STRUTWRIGHT_LOCALEDIR=str(self.folder))
                self.assertEqual(done.returncode, 0, done.stderr)
                self.assert_marked(command, done.stdout, own, 1)

    def test_no_drawing_cuts_a_word(self):
        own = pseudo_locale.own_texts(DUNNOCK)
        for language in ['en', *LANGUAGES]:
            for what, text in self.drawings(DUNNOCK, LANGUAGE=language):
                with self.subTest(what, language=language):
                    cut = [part for part in re.split(r'\s{2,}|\n', text)
                           if '…' in part and not is_part(part, own)]
                    self.assertEqual(cut, [])


if __name__ == '__main__':
    unittest.main()
