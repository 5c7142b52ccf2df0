# SPDX-License-Identifier: GPL-3.0-or-later
"""The manual pages: sound, and in agreement with what the program says and reads.

Needs man, and in the environment STRUTWRIGHT, the command line.
"""
import json
import os
import pathlib
import re
import subprocess
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PAGES = ROOT / 'data/man'
NUMBER = re.compile(r'"([a-z]+(?:_[a-z]+)*_(?:mm|deg|kg|share|g|gpa|n))"')


def run(*words, **environment):
    return subprocess.run([str(word) for word in words], encoding='utf-8', timeout=60,
                          env={**os.environ, **environment}, stdin=subprocess.DEVNULL,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE)


def read(name):
    return (PAGES / name).read_text().replace('\\-', '-')


def words_of(text):
    return set(re.findall(r'[A-Za-z_]+', text))


def help_of(*command):
    done = run(os.environ['STRUTWRIGHT'], *command, '--help', LANGUAGE='', LC_ALL='C')
    assert done.returncode == 0 and not done.stderr, done.stderr
    return done.stdout


def commands():
    found = re.findall(r'^  strutwright ([a-z]+) ', help_of(), re.M)
    assert len(found) > 4, found
    return found


def options(text):
    return set(re.findall(r'(?<![\w-])--([a-z]+(?:-[a-z]+)*)', text))


def sections(text, request):
    """What stands under each heading of that kind."""
    parts = re.split(r'^\.(?:SH|SS) .*\n', text, flags=re.M)[1:]
    heads = re.findall(r'^\.(SH|SS) (.*)$', text, re.M)
    return {name.strip('"'): part for (kind, name), part in zip(heads, parts)
            if kind == request}


def numbers_read_by(pattern):
    """Members with a unit in their name, as the sources that read them have it."""
    sources = sorted((ROOT / 'src/model').rglob(pattern))
    assert sources, pattern
    return {name for path in sources for name in NUMBER.findall(path.read_text())}


def example(page):
    block = re.search(r'^\.EX\n(.*?)^\.EE$', read(page), re.M | re.S)[1]
    return json.loads(block)


class Pages(unittest.TestCase):
    def test_each_is_sound(self):
        pages = sorted(PAGES.iterdir())
        self.assertGreaterEqual(len(pages), 3)
        for page in pages:
            done = run('man', '--warnings', '-E', 'UTF-8', '-l', '-Tutf8', '-Z', page,
                       LC_ALL='C.UTF-8', MANWIDTH='80')
            self.assertEqual((done.returncode, done.stderr), (0, ''), page.name)
            self.assertIn('STRUTWRIGHT', done.stdout)

    def test_each_names_the_others(self):
        names = {page.name for page in PAGES.iterdir()}
        for name in names:
            found = re.findall(r'^\.BR (strutwright[a-z-]*) \((\d)\)',
                               sections(read(name), 'SH')['SEE ALSO'], re.M)
            self.assertEqual({'%s.%s' % pair for pair in found}, names - {name})


class CommandLine(unittest.TestCase):
    page = read('strutwright.1')

    def test_every_command_and_each_of_its_options_is_there(self):
        described = sections(self.page, 'SS')
        for command in commands():
            self.assertIn(command, described)
            self.assertEqual(options(help_of(command)) - {'help'},
                             options(described[command]), command)

    def test_every_command_is_in_the_synopsis(self):
        synopsis = sections(self.page, 'SH')['SYNOPSIS']
        for command in commands():
            self.assertIn('"strutwright %s"' % command, synopsis)

    def test_the_options_without_a_command(self):
        described = options(sections(self.page, 'SH')['OPTIONS'])
        self.assertEqual(described, options(re.sub(r'COMMAND --help', '', help_of())))

    def test_every_variable_that_is_read(self):
        sources = ''.join(path.read_text() for path in (ROOT / 'src').rglob('*.c'))
        read_ones = set(re.findall(r'getenv \("([A-Z_]+)"', sources))
        self.assertIn('STRUTWRIGHT_DATADIR', read_ones)
        self.assertEqual(
            read_ones - words_of(sections(self.page, 'SH')['ENVIRONMENT']), set())


class Files(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def test_every_number_of_a_car_is_there(self):
        numbers = numbers_read_by('car-json*.c')
        self.assertIn('toe_in_deg', numbers)
        self.assertEqual(sorted(numbers - words_of(read('strutwright-car.5'))), [])

    def test_every_number_of_a_plate_is_there(self):
        numbers = numbers_read_by('plate-json*.c')
        self.assertIn('turns_deg', numbers)
        self.assertEqual(sorted(numbers - words_of(read('strutwright-plate.5'))), [])

    def write(self, name, page):
        path = self.folder / name
        path.write_text(json.dumps(example(page)))
        return path

    def test_the_examples_are_read(self):
        car = self.write('example.swcar', 'strutwright-car.5')
        plate = self.write('example.swplate', 'strutwright-plate.5')
        checked = run(os.environ['STRUTWRIGHT'], 'check', car)
        self.assertEqual((checked.returncode, checked.stderr), (0, ''))
        chosen = run(os.environ['STRUTWRIGHT'], 'choose', car, '--target', 'camber=-1',
                     '--plates', plate, LANGUAGE='', LC_ALL='C')
        self.assertEqual((chosen.returncode, chosen.stderr), (0, ''))
        self.assertIn(example('strutwright-plate.5')['name'], chosen.stdout)


if __name__ == '__main__':
    unittest.main()
