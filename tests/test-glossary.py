#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Each catalogue says the trade's words as its glossary has them.

In the last column of a glossary stands, for each English term that is held, what its
translation must have one of: `camber gain` Sturz je Hub, Sturzänderung. A longer term goes
before one that lies within it, so that a phrase can say otherwise than its words.
"""
import re
import unittest

from catalogue import LANGUAGES, ROOT, Message, messages

LEAST_TERMS = 100
SPACES = str.maketrans({'\u00a0': ' ', '\u202f': ' ', '\n': ' '})


def glossary(text):
    """Stems by English term."""
    held = {}
    for row in text.splitlines():
        cells = re.split(r' ?\| ?', row)
        for term, stems in re.findall(r'`([^`]+)` ([^`;]+)', cells[-2] if row.startswith('|')
                                      and len(cells) == 6 else ''):
            assert term not in held, term + ' stands twice'
            held[term] = [stem.strip().lower() for stem in stems.split(',')]
    return held


def pattern(terms):
    """Any of the terms as a word of its own; not in a name as camber=, tube.top or "slot"."""
    words = '|'.join('[ -]'.join(map(re.escape, re.split('[ -]', term)))
                     for term in sorted(terms, key=len, reverse=True))
    return re.compile(r'(?<![\w.\-"=])(%s)(?:s|es)?(?![\w="]|-\w|\.\w)' % words, re.I)


def plain(text, has_mnemonic):
    text = re.sub(r'\(_\w\)', '', text.translate(SPACES))
    return text.replace('_', '') if has_mnemonic else text


def is_option(word, message, translation):
    """A value of the command line, which stays as it is."""
    return (word.islower() and word in translation
            and all(file.startswith('src/command-line/') for file in message.files))


def deviations(held, catalogue, met=None):
    by_spelling = {re.sub('-', ' ', term.lower()): term for term in held}
    terms = pattern(held)
    for message in catalogue:
        has_mnemonic = re.search(r'(?<![\w.])_\w', message.original) is not None
        for i, original in enumerate(message.originals):
            said = plain(message.translations[min(i, len(message.translations) - 1)],
                         has_mnemonic)
            for found in terms.finditer(plain(original, has_mnemonic)):
                term = by_spelling[found[1].lower().replace('-', ' ')]
                if met is not None:
                    met.add(term)
                if (not any(stem in said.lower() for stem in held[term])
                        and not is_option(found[0], message, said)):
                    yield '%s: “%s” has none of %s: “%s”' % (term, original,
                                                             held[term], said)


class Glossaries(unittest.TestCase):
    def test_catalogues_keep_to_their_glossary(self):
        for language in LANGUAGES:
            with self.subTest(language):
                held = glossary((ROOT / f'po/glossary-{language}.md').read_text(
                    encoding='utf-8'))
                self.assertGreaterEqual(len(held), LEAST_TERMS)
                met = set()
                found = list(deviations(held, messages(ROOT / f'po/{language}.po'), met))
                self.assertEqual(found, [], '\n'.join(found))
                self.assertEqual(set(held) - met, set(), 'terms that no message has')

    def test_another_word_is_a_deviation(self):
        held = glossary('| camber | Sturz | | `camber` Sturz; `camber bolt` Schraube |')
        self.assertEqual(held, {'camber': ['sturz'], 'camber bolt': ['schraube']})
        for original, said, is_wrong in (
                ('_Camber', '_Sturz', False), ('_Camber', '_Neigung', True),
                ('Camber bolts', 'Schrauben', False), ('Camber-bolt', 'Sturz', True),
                ('cambered', 'gewölbt', False), ('camber=-2.5', 'camber=-2.5', False)):
            message = Message('', original, '', [said], False, ['src/model/car/car.c'])
            self.assertEqual(bool(list(deviations(held, [message]))), is_wrong, original)


if __name__ == '__main__':
    unittest.main()
