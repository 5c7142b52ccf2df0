#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every language is complete, and the programs speak it.

Needs gettext's tools, and in the environment STRUTWRIGHT, the command line, and
STRUTWRIGHT_LOCALEDIR, the built translations. Where localedef can build a locale with a
decimal comma, sentences must show it and files must not.
"""
import json
import os
import re
import tempfile
import unittest
from pathlib import Path

from catalogue import LANGUAGES, ROOT, run, template, text_of

WREN = ROOT / 'data/wren.swcar'
# Marks at an end that are not those of the sources; "No." is an abbreviation.
ENDS = {'ja': {'.': ('。', 'No.'), '?': ('？',)}}


def messages(catalogue):
    """The messages of a catalogue without its header."""
    texts = re.split(r'\n\n', catalogue.strip())
    return [text for text in texts if re.search(r'^msgid (?!""\n(?!"))', text, re.M)]


class Translations(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.folder = Path(place.name)

    def test_each_language_has_every_message_of_the_sources(self):
        pot = template(self.folder)
        self.assertGreater(len(messages(pot.read_text(encoding='utf-8'))), 300)
        for language in LANGUAGES:
            with self.subTest(language):
                merged = self.folder / f'{language}.po'
                text_of('msgmerge', '--quiet', '--no-fuzzy-matching', '--output-file',
                        merged, ROOT / f'po/{language}.po', pot)
                for kind in ('--untranslated', '--only-fuzzy'):
                    left = messages(text_of('msgattrib', kind, merged))
                    self.assertEqual(left, [], f'{language}.po, {kind}: see its messages '
                                     'above, then: msgmerge --update')

    def test_a_sentence_stays_a_sentence(self):
        for language in LANGUAGES:
            catalogue = (ROOT / f'po/{language}.po').read_text(encoding='utf-8')
            pairs = re.findall(r'^msgid ((?:".*"\n)+)msgstr ((?:".*"\n?)+)', catalogue,
                               re.M)
            self.assertGreater(len(pairs), 300)
            for original, translated in pairs[1:]:
                end = re.search(r'([.:…?]?)"$', original.strip())[1]
                ends = ENDS.get(language, {}).get(end, (end,))
                self.assertTrue(translated.strip().endswith(tuple(e + '"' for e in ends)),
                                f'{language}.po: {original}{translated}')


class German(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        place = tempfile.TemporaryDirectory()
        cls.addClassCleanup(place.cleanup)
        cls.folder = Path(place.name)
        run('localedef', '-i', 'de_DE', '-f', 'UTF-8', cls.folder / 'de_DE.UTF-8')

    def strutwright(self, *words, **environment):
        return run(os.environ['STRUTWRIGHT'], *words,
                   **{'LC_ALL': 'C.UTF-8', 'LANGUAGE': 'de', **environment})

    def comma(self):
        """An environment with a decimal comma."""
        if not (self.folder / 'de_DE.UTF-8').is_dir():
            self.skipTest('localedef cannot build a locale with a decimal comma here')
        return {'LC_ALL': 'de_DE.UTF-8', 'LOCPATH': str(self.folder)}

    def leaning_wren(self):
        """The demo car with a camber that deserves a warning."""
        text, n = re.subn(r'("camber_deg": *)[-0-9.]+', r'\g<1>-2.25',
                          WREN.read_text(encoding='utf-8'))
        self.assertEqual(n, 1)
        car = self.folder / 'leaning.swcar'
        car.write_text(text, encoding='utf-8')
        return car

    def test_help_is_german(self):
        said = self.strutwright('--help').stdout
        self.assertIn('Aufruf:\n', said)
        self.assertIn('Eine Tabelle über den Radhub als CSV oder JSON ausgeben.', said)

    def test_a_refusal_is_german(self):
        done = self.strutwright('table', WREN, '--step', '0')
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual(done.stderr,
                         'strutwright: Die Schrittweite muss über null liegen.\n')

    def test_a_plural_is_german(self):
        one = self.strutwright('check', self.leaning_wren())
        some = self.strutwright('check', WREN)
        self.assertRegex(one.stdout, r'wirkt 1 Angabe unplausibel\.')
        self.assertRegex(some.stdout, r'mit ([2-9]|[1-9]\d+) Warnungen\.')

    def test_sentences_have_the_comma(self):
        comma = self.comma()
        said = self.strutwright('check', self.leaning_wren(), **comma)
        self.assertIn('Sturz: −2,25° liegt außerhalb der −1,5 bis 0,5°', said.stdout)

    def test_tables_keep_the_point(self):
        comma = self.comma()
        for kind in ('csv', 'json'):
            words = ('table', WREN, '--format', kind, '--step', '20')
            plain = self.strutwright(*words, LANGUAGE='', LC_ALL='C')
            german = self.strutwright(*words, **comma)
            self.assertEqual(plain.returncode, 0, plain.stderr)
            self.assertRegex(plain.stdout, r'\d\.\d')
            self.assertEqual(german.stdout, plain.stdout)

    def test_load_cases_keep_their_names_for_programs(self):
        dunnock = ROOT / 'data/dunnock.swcar'
        for words in ((dunnock, '--case', 'Standing'), (WREN, '--spring', 'coil')):
            loads = self.strutwright('loads', *words, '--format', 'json')
            self.assertEqual(loads.returncode, 0, loads.stderr)
            self.assertEqual(json.loads(loads.stdout)['case'], 'Standing')
        asked = self.strutwright('loads', WREN, '--case', 'Stehen')
        self.assertNotEqual(asked.returncode, 0)
        self.assertIn('“Standing”', asked.stderr)

    def test_drawings_differ_by_language(self):
        """The words are outlines in the file: that they changed is all one can see."""
        drawn = {}
        for language in ('de', 'en'):
            path = self.folder / f'{language}.svg'
            done = self.strutwright('plot', WREN, '--output', path, LANGUAGE=language)
            self.assertEqual(done.returncode, 0, done.stderr)
            drawn[language] = path.read_bytes()
        self.assertNotEqual(drawn['de'], drawn['en'])


if __name__ == '__main__':
    unittest.main()
