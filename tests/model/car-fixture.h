/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cars for tests, from tests/data/cars. */

#pragma once

#include "model/car/car.h"

#include <gio/gio.h>

/* A file of tests/data, by parts as in g_build_filename (). */
char *fixture_path (const char *first, ...) G_GNUC_NULL_TERMINATED;
/* tests/data/cars/good/@name.swcar, which must load. */
Car *fixture_car (const char *name);
/* data/@name.swcar, which must load. */
Car *fixture_demo (const char *name);

/* What a file makes of it is the same car, what is known by name too. */
void fixture_check_saves (const Car *car);

/* A folder of this test's own; takes what lies in it along when removed. */
char *fixture_folder_new (void);
void fixture_folder_remove (char *folder);
