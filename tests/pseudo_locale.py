# SPDX-License-Identifier: GPL-3.0-or-later
"""A language nobody speaks: every message of the sources in accents, brackets, and longer.

What a person sees in plain letters while the program speaks it is not translatable.
"""
import json
import math
import re
from pathlib import Path

from catalogue import ROOT, messages, template, text_of

LANGUAGE = 'qaa'  # ISO 639-2 keeps qaa to qtz for local use
LONGER = 0.35     # as German is than English: common practice, no published source
ACCENTED = str.maketrans(
    'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ',
    'àƀçđéƒĝħíĵķļɱñöþǫřšţüṽŵẋýžÀƁÇĐÉƑĜĦÍĴĶĻṀÑÖÞǪŘŠŢÜṼŴẊÝŽ')
# A conversion of printf, a tag or an entity, which stay as they are.
KEPT = re.compile(r'(%(?:\d+\$)?[-+ 0#\']*(?:\d+|\*)?(?:\.(?:\d+|\*))?(?:hh|h|ll|l|z|j|t|q)?'
                  r'[diouxXeEfgGcsp%]|%<PRI\w+>|</?\w+(?: [^<>]*)?/?>|&\w+;)')
PLAIN_WORD = re.compile(r'[A-Za-z]{2,}')

# What is the same in every language: symbols of units, formats, keys, proper names.
UNITS = {'mm', 'cm', 'kg', 'lb', 'lbf', 'in', 'ft', 'deg', 'Nm', 'Hz', 'kN', 'MPa', 'GPa',
         'rad', 'Ns'}
NAMES = {'Strutwright', 'PNG', 'SVG', 'PDF', 'CSV', 'JSON', 'ISO', 'SAE', 'DIN', 'MacPherson'}
# Load cases of a demo car that are usual ones and called so in any language.
USUAL_CASES = {'Standing', 'Pothole'}


def pseudo(text):
    """The message as this language has it."""
    parts = KEPT.split(text)
    accented = ''.join(part if i % 2 else part.translate(ACCENTED)
                       for i, part in enumerate(parts))
    body = accented.strip('\n')
    before, after = accented[:len(accented) - len(accented.lstrip('\n'))], \
        accented[len(accented.rstrip('\n')):]
    more = math.ceil(LONGER * sum(len(part) for part in parts[::2]))
    tail = ' '.join('ö' * min(8, more - i) for i in range(0, more, 9) if more > i)
    return f'{before}⟦{body}{" " if more > 8 else ""}{tail}⟧{after}'


def quoted(text):
    return json.dumps(text, ensure_ascii=False)


def entry(message):
    lines = ['#, c-format'] if message.is_c_format else []
    if message.context:
        lines.append('msgctxt ' + quoted(message.context))
    lines.append('msgid ' + quoted(message.original))
    if not message.plural:
        return '\n'.join(lines + ['msgstr ' + quoted(pseudo(message.original))])
    return '\n'.join(lines + ['msgid_plural ' + quoted(message.plural),
                              'msgstr[0] ' + quoted(pseudo(message.original)),
                              'msgstr[1] ' + quoted(pseudo(message.plural))])


def build(folder):
    """The catalogue compiled into the folder, for STRUTWRIGHT_LOCALEDIR; what it says."""
    target = Path(folder) / LANGUAGE / 'LC_MESSAGES'
    target.mkdir(parents=True)
    catalogue = Path(folder) / f'{LANGUAGE}.po'
    said = messages(template(folder))
    header = ('msgid ""\nmsgstr "Language: %s\\nMIME-Version: 1.0\\n'
              'Content-Type: text/plain; charset=UTF-8\\n'
              'Content-Transfer-Encoding: 8bit\\n'
              'Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n' % LANGUAGE)
    catalogue.write_text('\n\n'.join([header] + [entry(message) for message in said]) + '\n',
                         encoding='utf-8')
    text_of('msgfmt', '--check-format', '--check-domain', '--check-accelerators=_',
            '--output-file', target / 'strutwright.mo', catalogue)
    return said


def named(value):
    """The names, marks and notes anywhere in a JSON file."""
    if isinstance(value, dict):
        for key, part in value.items():
            if key in ('name', 'notes', 'mark') and isinstance(part, str):
                yield part
            yield from named(part)
    for part in value if isinstance(value, list) else ():
        yield from named(part)


def own_texts(*cars):
    """What car files and the plates call their own, longest first."""
    files = [*map(Path, cars), *(ROOT / 'data/plates').glob('*.swplate')]
    return sorted({text for file in files
                   for text in named(json.loads(file.read_text(encoding='utf-8')))
                   if PLAIN_WORD.search(text) and text not in USUAL_CASES},
                  key=len, reverse=True)


def is_part(text, own):
    """Of a user's own text, where that is wrapped or cut."""
    bare = text.strip().rstrip('…')
    return len(bare) > 2 and any(bare in part for part in own)


def plain_words(text, own=()):
    """Those that no catalogue has been asked for and that are not the user's own."""
    if is_part(text, own):
        return []
    for part in own:
        text = text.replace(part, '')
    return [word for word in PLAIN_WORD.findall(text) if word not in UNITS | NAMES]
