# SPDX-License-Identifier: GPL-3.0-or-later
"""What an installation holds, and that it works from the folder it was put in.

Needs in the environment: MESON and BUILD_FOLDER, and PREFIX, BINDIR, DATADIR, LIBEXECDIR,
LOCALEDIR and MANDIR as the build has them; a display of its own.
"""
import json
import os
import pathlib
import re
import shutil
import signal
import subprocess
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree

from gtkdrive import sh, wait_for

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
APP_ID = 'org.strutwright.Strutwright'
CAR_TYPE = 'application/x-strutwright-car+json'
PLATE_TYPE = 'application/x-strutwright-plate+json'
ICONS = ('scalable/apps/%s.svg' % APP_ID, 'symbolic/apps/%s-symbolic.svg' % APP_ID,
         'scalable/mimetypes/application-x-strutwright-car+json.svg',
         'scalable/mimetypes/application-x-strutwright-plate+json.svg')


def languages():
    lines = (ROOT / 'po/LINGUAS').read_text().splitlines()
    return [line for line in lines if line and not line.startswith('#')]


def expected_data():
    """The files below the data folder."""
    found = {path.relative_to(ROOT / 'data') for path in (ROOT / 'data').rglob('*')
             if path.suffix in ('.swcar', '.swplate')}
    assert len(found) > 10, found
    return {pathlib.Path('strutwright') / path for path in found} | {
        pathlib.Path(path) for path in (
            'applications/%s.desktop' % APP_ID,
            'doc/strutwright/LICENSE',
            'glib-2.0/schemas/%s.gschema.xml' % APP_ID,
            'metainfo/%s.metainfo.xml' % APP_ID,
            'mime/packages/%s.xml' % APP_ID,
            *('icons/hicolor/' + icon for icon in ICONS))}


class Stage:
    """An installation in a folder of its own, with what a package's installer makes."""

    def __init__(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix='strutwright-'))
        self.environment = {**os.environ, 'ASAN_OPTIONS': 'detect_leaks=0'}
        self.run(os.environ['MESON'], 'install', '--no-rebuild', '--quiet', '--destdir',
                 self.folder, '-C', os.environ['BUILD_FOLDER'])
        self.files = {path.relative_to(self.folder) for path in self.folder.rglob('*')
                      if not path.is_dir()}
        self.bin, self.data, self.libexec, self.locale, self.man = (
            self.place(name)
            for name in ('BINDIR', 'DATADIR', 'LIBEXECDIR', 'LOCALEDIR', 'MANDIR'))
        self.environment.update(self.find_by())
        self.run('glib-compile-schemas', '--strict', self.data / 'glib-2.0/schemas')
        self.run('update-mime-database', self.data / 'mime')
        self.run('update-desktop-database', self.data / 'applications')
        self.run('gtk4-update-icon-cache', '--ignore-theme-index', '--quiet',
                 self.data / 'icons/hicolor')

    def place(self, name):
        whole = pathlib.Path(os.environ['PREFIX']) / os.environ[name]
        return self.folder / whole.relative_to('/')

    def find_by(self):
        """The variables by which programs and desktop find what has been moved."""
        system = os.environ.get('XDG_DATA_DIRS') or '/usr/local/share:/usr/share'
        moved = {'STRUTWRIGHT_DATADIR': self.data / 'strutwright',
                 'STRUTWRIGHT_LIBEXECDIR': self.libexec,
                 'STRUTWRIGHT_LOCALEDIR': self.locale,
                 'XDG_DATA_DIRS': '%s:%s' % (self.data, system),
                 'PATH': '%s:%s' % (self.bin, os.environ['PATH'])}
        return {name: str(value) for name, value in moved.items()}

    def run(self, *words, **environment):
        done = subprocess.run([str(word) for word in words], encoding='utf-8', timeout=100,
                              env={**self.environment, **environment},
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        assert done.returncode == 0, '%s: %s%s' % (words, done.stdout, done.stderr)
        return done.stdout

    def gio(self, sentence):
        """What the desktop's own library answers, in a process that finds the stage."""
        return self.run('/usr/bin/python3', '-c',
                        'from gi.repository import Gio; ' + sentence).strip()


def setUpModule():
    global stage
    stage = Stage()
    unittest.addModuleCleanup(shutil.rmtree, stage.folder)


class Files(unittest.TestCase):
    def test_each_is_there_and_nothing_else(self):
        def staged(folder, names):
            return {(folder / name).relative_to(stage.folder) for name in names}
        expected = (
            staged(stage.bin, ['strutwright'])
            | staged(stage.libexec, ['strutwright-plot', 'strutwright-window'])
            | staged(stage.data, expected_data())
            | staged(stage.man, ['man%s/%s' % (page.suffix[1:], page.name)
                                 for page in (ROOT / 'data/man').iterdir()])
            | staged(stage.locale, ['%s/LC_MESSAGES/strutwright.mo' % language
                                    for language in languages()]))
        self.assertEqual(sorted(stage.files - expected), [], 'not expected')
        self.assertEqual(sorted(expected - stage.files), [], 'missing')

    def test_every_picture_is_square_and_scales(self):
        for icon in ICONS:
            picture = ElementTree.parse(stage.data / 'icons/hicolor' / icon).getroot()
            side = picture.get('width')
            self.assertEqual(picture.get('height'), side)
            self.assertEqual(picture.get('viewBox'), '0 0 %s %s' % (side, side))

    def test_all_speak_of_the_same_things(self):
        desktop = (stage.data / ('applications/%s.desktop' % APP_ID)).read_text()
        metainfo = ElementTree.parse(stage.data / ('metainfo/%s.metainfo.xml' % APP_ID))
        provided = [node.text for node in metainfo.findall('provides/mediatype')]
        opened = re.search('^MimeType=(.*);$', desktop, re.M)[1].split(';')
        self.assertEqual(sorted(opened), sorted(provided))
        self.assertEqual(sorted(opened), [CAR_TYPE, PLATE_TYPE])
        self.assertEqual(metainfo.findtext('launchable'), APP_ID + '.desktop')
        self.assertTrue((stage.bin / metainfo.findtext('provides/binary')).exists())


class Kinds(unittest.TestCase):
    def kind(self, path):
        return stage.gio('print(Gio.File.new_for_path(%r).query_info('
                         '"standard::content-type", 0).get_content_type())' % str(path))

    def test_by_suffix(self):
        for path in (stage.data / 'strutwright').rglob('*.sw*'):
            wanted = CAR_TYPE if path.suffix == '.swcar' else PLATE_TYPE
            self.assertEqual(self.kind(path), wanted)

    def test_without_a_suffix_by_the_first_member(self):
        for name, wanted in (('wren.swcar', CAR_TYPE),
                             ('plates/stock-mount.swplate', PLATE_TYPE)):
            bare = stage.folder / 'bare'
            shutil.copy(stage.data / 'strutwright' / name, bare)
            self.assertEqual(self.kind(bare), wanted)

    def test_other_json_stays_what_it_is(self):
        other = stage.folder / 'other.json'
        shutil.copy(stage.data / 'strutwright/wren.swcar', other)
        self.assertEqual(self.kind(other), 'application/json')

    def test_the_program_opens_both(self):
        for kind in (CAR_TYPE, PLATE_TYPE):
            self.assertEqual(
                stage.gio('print(Gio.AppInfo.get_default_for_type(%r, False).get_id())'
                          % kind), APP_ID + '.desktop')


class Programs(unittest.TestCase):
    def test_the_command_line_finds_its_parts(self):
        car = stage.data / 'strutwright/wren.swcar'
        self.assertRegex(stage.run('strutwright', '--version'), r'^strutwright \d')
        self.assertEqual(stage.run('strutwright', 'table', car, '--step', 80).count('\n'), 4)
        picture = stage.folder / 'curves.png'
        stage.run('strutwright', 'plot', car, '--output', picture)
        self.assertEqual(picture.read_bytes()[:8], b'\x89PNG\r\n\x1a\n')
        ranked = stage.run('strutwright', 'choose', car, '--target', 'camber=-2.5')
        self.assertIn('Camber and caster plate', ranked)

    def test_it_speaks_each_language(self):
        english = stage.run('strutwright', '--help', LANGUAGE='', LC_ALL='C')
        self.assertIn('Usage', english)
        for language in languages():
            said = stage.run('strutwright', '--help', LANGUAGE=language, LC_ALL='C.UTF-8')
            self.assertNotEqual(said, english)

    def test_the_settings_are_found(self):
        self.assertEqual(stage.run('gsettings', 'get', APP_ID, 'renderer').strip(),
                         "'automatic'")

    def test_a_double_click_opens_the_window(self):
        """By what the desktop knows of the car's kind, and in the desktop file's name."""
        car = stage.data / 'strutwright/fieldfare.swcar'
        title = json.loads(car.read_text())['name']
        # away: a pipe would be waited for until the window closes
        stage.gio('import os; log = os.open(os.devnull, os.O_WRONLY); '
                  'os.dup2(log, 1); os.dup2(log, 2); '
                  'Gio.AppInfo.get_default_for_type(%r, False)'
                  '.launch([Gio.File.new_for_path(%r)], None)' % (CAR_TYPE, str(car)))
        window = wait_for(title, lambda: subprocess.run(
            ['xdotool', 'search', '--onlyvisible', '--name', '^%s$' % title],
            stdout=subprocess.PIPE, text=True).stdout.split())[0]
        process = int(sh('xdotool', 'getwindowpid', window))
        self.addCleanup(self.end, process)
        desktop = (stage.data / ('applications/%s.desktop' % APP_ID)).read_text()
        name = re.search('^StartupWMClass=(.*)$', desktop, re.M)[1]
        self.assertIn('"%s"' % name, sh('xprop', '-id', window, 'WM_CLASS'))
        program = pathlib.Path('/proc/%d/exe' % process).resolve()
        self.assertEqual(program, stage.libexec / 'strutwright-window')

    def end(self, process):
        os.kill(process, signal.SIGTERM)
        wait_for('the end', lambda: not pathlib.Path('/proc/%d' % process).exists())


if __name__ == '__main__':
    unittest.main(warnings='ignore')
