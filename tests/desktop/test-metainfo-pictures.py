# SPDX-License-Identifier: GPL-3.0-or-later
"""The pictures that the metainfo names are there, and as large as it says."""
import pathlib
import struct
import sys
import xml.etree.ElementTree as ET

metainfo, folder = sys.argv[1:]
images = list(ET.parse(metainfo).iter('image'))
assert images, 'no picture is named'
for image in images:
    address, _, name = image.text.rpartition('/')
    assert address.endswith('/screenshots'), image.text
    head = (pathlib.Path(folder) / name).read_bytes()[:24]
    assert head[:8] == b'\x89PNG\r\n\x1a\n', name
    size = struct.unpack('>II', head[16:24])  # of the header chunk (ISO/IEC 15948, 11.2.2)
    assert size == (int(image.get('width')), int(image.get('height'))), (name, size)
