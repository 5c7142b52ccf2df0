#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The rules of the repository that a compiler cannot check.

Layers and their folders include only what lies below them, files carry their licence
and stay short, names say the thing, and the list of files to translate is complete.
"""
import os
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parent.parent).resolve()

TOP_LEVEL = {'README.md', 'DEVELOPERS.md', 'LICENSE', 'meson.build', 'meson_options.txt',
             'src', 'data', 'tests', 'po', 'screenshots'}

# A layer, and the layers that its includes may name.
LAYERS = {
    'kernel': {'kernel'},
    'model': {'kernel', 'model'},
    'drawing': {'kernel', 'model', 'drawing'},
    'window': {'kernel', 'model', 'drawing', 'window'},
    'command-line': {'kernel', 'model', 'drawing', 'command-line'},
}
C_STANDARD = {f'{name}.h' for name in (
    'assert complex ctype errno fenv float inttypes iso646 limits locale math setjmp '
    'signal stdalign stdarg stdatomic stdbool stddef stdint stdio stdlib stdnoreturn '
    'string tgmath threads time uchar wchar wctype').split()}
# Libraries that a layer must do without, by the start of the include.
FORBIDDEN_LIBRARY = {
    'model': re.compile(r'(gtk|gdk|gsk|cairo|pango)\b'),
    'drawing': re.compile(r'(gtk|gdk|gsk)/'),
    'command-line': re.compile(r'(gtk|gdk|gsk)/'),
}

SPDX = '/* SPDX-License-Identifier: GPL-3.0-or-later */'
MOST_LINES = 600
MOST_FILES = 50  # of C in one folder
VAGUE_NAMES = {'util', 'utils', 'common', 'helper', 'helpers', 'misc'}
LEFTOVER = re.compile(r'\b(TODO|FIXME|XXX)\b')
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
COMMENT_OR_STRING = re.compile(r'/\*.*?\*/|//[^\n]*|"(?:\\.|[^"\\\n])*"', re.DOTALL)
TRANSLATED_C = re.compile(r'(?<!\w)(_|N_|C_|NC_|ngettext|g_dngettext)\s*\(')
TRANSLATED_UI = re.compile(r'translatable="(yes|true)"')


def files_below(*folders):
    for folder in folders:
        for path in sorted((ROOT / folder).rglob('*')):
            if path.is_file() and '__pycache__' not in path.parts:
                yield path


def short(path):
    return path.relative_to(ROOT).as_posix()


def text_of(path):
    """The text of a file, or nothing for a picture and the like."""
    try:
        return path.read_text(encoding='utf-8')
    except UnicodeDecodeError:
        return ''


def is_c(path):
    return path.suffix in ('.c', '.h')


def kept_entries():
    """What the repository keeps at the top; all that is there where no git tells."""
    kept = subprocess.run(['git', '-C', str(ROOT), 'ls-files'], text=True,
                          capture_output=True)
    if kept.returncode != 0 or not (ROOT / '.git').exists():
        return os.listdir(ROOT)
    return {line.split('/')[0] for line in kept.stdout.splitlines()}


def check_top_level():
    found = {entry for entry in kept_entries() if not entry.startswith('.')}
    for entry in sorted(found - TOP_LEVEL):
        allowed = ' '.join(sorted(TOP_LEVEL))
        yield f'{entry}: does not belong at the top level; allowed: {allowed}'


def check_includes():
    for path in filter(is_c, files_below('src')):
        layer = path.relative_to(ROOT / 'src').parts[0]
        if layer not in LAYERS:
            yield f'{short(path)}: lies in none of the layers {" ".join(LAYERS)}'
            continue
        for bracket, name in INCLUDE.findall(text_of(path)):
            problem = problem_of_include(layer, bracket, name)
            if problem:
                yield f'{short(path)}: includes {name}: {problem}'


def folders_of(layer):
    """The folders of a layer, in the order in which they may include one another."""
    listing = re.search(r'_folders = \[(.*?)\]', text_of(ROOT / 'src' / layer / 'meson.build'),
                        re.DOTALL)
    return re.findall(r"'([^']+)'", listing[1]) if listing else []


def check_folders():
    for layer in LAYERS:
        folders = folders_of(layer)
        for path in filter(is_c, files_below(f'src/{layer}')):
            parts = path.relative_to(ROOT / 'src' / layer).parts
            folder = parts[0] if len(parts) > 1 else None
            if folder is not None and folder not in folders:
                yield f'{short(path)}: {folder} is not listed in src/{layer}/meson.build'
                continue
            for _, name in INCLUDE.findall(text_of(path)):
                problem = problem_of_folder(layer, folders, folder, name.split('/'))
                if problem:
                    yield f'{short(path)}: includes {name}: {problem}'


def problem_of_folder(layer, folders, folder, parts):
    if parts[0] != layer or folder is None:
        return None
    if len(parts) == 2:
        return f'what lies in {layer}/ itself is above its folders'
    if parts[1] in folders[:folders.index(folder) + 1]:
        return None
    return f'{parts[1]} is listed after {folder} in src/{layer}/meson.build'


def check_folder_sizes():
    for layer in LAYERS:
        for folder in [ROOT / 'src' / layer, *(ROOT / 'src' / layer).glob('*/')]:
            n_files = sum(1 for path in folder.glob('*') if is_c(path))
            if n_files > MOST_FILES:
                yield (f'{short(folder)}: {n_files} files, {MOST_FILES} at most; '
                       'split it by subject')


def problem_of_include(layer, bracket, name):
    if bracket == '"':
        folder = name.split('/')[0] if '/' in name else None
        if folder is None:
            return f'an include carries its folder, as in "{layer}/{name}"'
        if folder not in LAYERS[layer]:
            return f'{layer} may only include {", ".join(sorted(LAYERS[layer]))}'
    elif layer == 'kernel' and name not in C_STANDARD:
        return 'the kernel is plain C: standard headers only'
    elif layer in FORBIDDEN_LIBRARY and FORBIDDEN_LIBRARY[layer].match(name):
        return f'a library that {layer} must do without'
    return None


def check_headings():
    for path in filter(is_c, files_below('src', 'tests')):
        text = text_of(path)
        if text.split('\n', 1)[0] != SPDX:
            yield f'{short(path)}: the first line must be {SPDX}'
        if path.suffix == '.h' and not re.search(r'^#pragma once$', text, re.MULTILINE):
            yield f'{short(path)}: a header needs #pragma once'


def check_sizes():
    for path in files_below('src'):
        n_lines = text_of(path).count('\n')
        if n_lines > MOST_LINES:
            yield (f'{short(path)}: {n_lines} lines, {MOST_LINES} at most; '
                   'split it by concern')


def check_names():
    for path in files_below('src', 'tests', 'data'):
        for part in path.relative_to(ROOT).parts:
            vague = VAGUE_NAMES.intersection(re.split(r'[-_.]', part.lower()))
            if vague:
                yield f'{short(path)}: "{vague.pop()}" says nothing; name what is in it'


def check_leftovers():
    for path in files_below('src', 'data'):
        for number, line in enumerate(text_of(path).splitlines(), 1):
            found = LEFTOVER.search(line)
            if found:
                yield f'{short(path)}:{number}: a {found[1]} left over'


def listed(path):
    lines = (line.split('#')[0].strip() for line in text_of(path).splitlines())
    return {word for line in lines for word in line.split()}


def check_languages():
    languages = listed(ROOT / 'po/LINGUAS')
    translations = {path.stem for path in (ROOT / 'po').glob('*.po')}
    for language in sorted(languages - translations):
        yield f'po/LINGUAS: lists {language}, but there is no po/{language}.po'
    for language in sorted(translations - languages):
        yield f'po/{language}.po: not listed in po/LINGUAS, so nobody sees it'


def has_translated_text(path):
    if is_c(path):
        return TRANSLATED_C.search(COMMENT_OR_STRING.sub(' ', text_of(path)))
    return path.suffix == '.ui' and TRANSLATED_UI.search(text_of(path))


def check_files_to_translate():
    to_translate = listed(ROOT / 'po/POTFILES')
    for name in sorted(to_translate):
        if not (ROOT / name).is_file():
            yield f'po/POTFILES: lists {name}, which does not exist'
    for path in filter(has_translated_text, files_below('src')):
        if short(path) not in to_translate:
            yield f'po/POTFILES: lacks {short(path)}, which has text to translate'


CHECKS = (check_top_level, check_includes, check_folders, check_folder_sizes,
          check_headings, check_sizes, check_names, check_leftovers, check_languages,
          check_files_to_translate)


def main():
    problems = [problem for check in CHECKS for problem in check()]
    n_read = sum(1 for _ in filter(is_c, files_below('src')))
    if n_read == 0:
        problems.append(f'{ROOT}: no C file found in src, so nothing was checked')
    for problem in problems:
        print(problem, file=sys.stderr)
    print(f'{len(CHECKS)} rules held against {n_read} C files: {len(problems)} problems')
    return 1 if problems else 0


if __name__ == '__main__':
    sys.exit(main())
