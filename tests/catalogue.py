# SPDX-License-Identifier: GPL-3.0-or-later
"""What the sources have to translate, and what a catalogue says of it. Needs gettext's tools."""
import ast
import os
import re
import subprocess
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
LANGUAGES = [line.strip() for line in (ROOT / 'po/LINGUAS').read_text().splitlines()
             if line.strip() and not line.startswith('#')]
# As meson's preset "glib" has them.
KEYWORDS = ('_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'ngettext:1,2', 'g_dngettext:2,3')
FLAGS = ('N_:1:pass-c-format', 'C_:2:pass-c-format', 'NC_:2:pass-c-format',
         'g_dngettext:2:pass-c-format', 'g_strdup_printf:1:c-format',
         'g_string_printf:2:c-format', 'g_string_append_printf:2:c-format',
         'g_error_new:3:c-format', 'g_set_error:4:c-format')
STRING = r'((?:"(?:[^"\\\n]|\\.)*"\n?)+)'


def run(*words, **environment):
    return subprocess.run([str(word) for word in words], encoding='utf-8', timeout=60,
                          env={**os.environ, **environment}, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE)


def text_of(*words, **environment):
    done = run(*words, **environment)
    assert done.returncode == 0, done.stderr
    return done.stdout


def template(folder):
    """A catalogue of the sources, read anew."""
    pot = Path(folder) / 'strutwright.pot'
    text_of('xgettext', '--files-from', ROOT / 'po/POTFILES', '--directory', ROOT,
            '--from-code=UTF-8', '--add-comments', '--output', pot,
            *(f'--keyword={keyword}' for keyword in KEYWORDS),
            *(f'--flag={flag}' for flag in FLAGS))
    return pot


@dataclass
class Message:
    context: str  # '' without one
    original: str
    plural: str   # '' without one
    translations: list
    is_c_format: bool
    files: list   # of the sources that have it

    @property
    def originals(self):
        return [text for text in (self.original, self.plural) if text]


def unquoted(lines):
    return ''.join(ast.literal_eval(line) for line in lines.split('\n') if line)


def messages(path):
    """Those of a catalogue without its header."""
    found = []
    for text in re.split(r'\n\n+', Path(path).read_text(encoding='utf-8')):
        parts = {name: unquoted(lines) for name, lines in re.findall(
            r'^(msg(?:ctxt|id|id_plural|str(?:\[\d\])?)) ' + STRING, text + '\n', re.M)}
        if parts.get('msgid'):
            found.append(Message(parts.get('msgctxt', ''), parts['msgid'],
                                 parts.get('msgid_plural', ''),
                                 [parts[name] for name in parts if 'msgstr' in name],
                                 re.search(r'^#,.*(?<!no-)c-format', text, re.M)
                                 is not None,
                                 re.findall(r'^#: (.*)$', text, re.M)))
    return found
