/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plates a user can choose from: those that come with the program, those in the
 * user's data folder, and those that lie beside the car file. */

#pragma once

#include "model/plate/plate.h"

#include <gio/gio.h>

typedef enum {
  PLATE_FROM_PROGRAM,
  PLATE_FROM_USER,
  PLATE_FROM_CAR_FOLDER
} PlateOrigin;

typedef struct {
  Plate *plate;
  GFile *file;
  PlateOrigin origin;
} ShelfPlate;

/* The nearest origin first, within each in the order of their names; the nearer origin
 * replaces a plate of the same name. */
typedef struct {
  GPtrArray *plates;   /* of ShelfPlate */
  GPtrArray *problems; /* of char *: one sentence for every file that was refused */
} PlateLibrary;

/* Whether a file of that name is a plate's: it ends in .swplate. */
gboolean plate_library_takes_name (const char *name);

/* Files of such names, in the folders themselves and not below. @car_file may be
 * NULL. Never fails: what cannot be read is a problem in the list. */
PlateLibrary *plate_library_load (GFile *car_file);
void plate_library_free (PlateLibrary *library);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PlateLibrary, plate_library_free)

const ShelfPlate *plate_library_find (const PlateLibrary *library, const char *name);

/* The folder for the user's own plates, made when it is missing; and a file in it for a
 * plate of this name, where none is yet. */
GFile *plate_library_user_folder (void);
GFile *plate_library_new_file (const char *name);
