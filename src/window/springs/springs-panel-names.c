/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-rows.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#define ROD_PREFIX "rod."

/* Of the file, inside the springs or a setup. */
static const struct {
  const char *name;
  SpringsGroup group;
} objects[] = {
  { "torsion_bar", SPRINGS_BAR },
  { "coil", SPRINGS_COIL },
  { "helper", SPRINGS_HELPER },
  { "bump_stop", SPRINGS_STOPS },
  { "anti_roll_bar", SPRINGS_ANTI_ROLL },
  { "damper", SPRINGS_DAMPER },
  { "rod", SPRINGS_ROD },
};

const char *
springs_group_name (SpringsGroup group)
{
  switch (group) {
  case SPRINGS_BAR:
    return _ ("Torsion bar");
  case SPRINGS_COIL:
    return _ ("Coil");
  case SPRINGS_HELPER:
    return _ ("Helper");
  case SPRINGS_STOPS:
    return _ ("Bump stop");
  case SPRINGS_ANTI_ROLL:
    return _ ("Anti-roll bar");
  case SPRINGS_DAMPER:
    return _ ("Damper and tyre");
  default:
    return _ ("Rod");
  }
}

char *
springs_row_full_name (const SpringsRow *row)
{
  if (row->group == SPRINGS_DAMPER || row == &springs_rows[ROW_DROOP_STOP])
    return g_strdup (_ (row->name));
  /* Translators: a part, and a number of it: “Coil: Rate”. */
  return g_strdup_printf (_ ("%s: %s"), springs_group_name (row->group), _ (row->name));
}

/* The rod's members stand in the car's strut, some with another beginning. */
static gboolean
is_rod_path (const char *path, const char *member)
{
  static const char *const beginnings[] = { "", "rod_", "guide_" };
  const char *dot = strrchr (path, '.');

  if (dot == NULL ||
      !(g_str_has_prefix (path, "strut.") || g_str_has_prefix (path, ROD_PREFIX)))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (beginnings); i++)
    if (g_str_has_prefix (dot + 1, beginnings[i]) &&
        g_str_equal (dot + 1 + strlen (beginnings[i]), member))
      return TRUE;
  return FALSE;
}

static gboolean
is_row_path (const SpringsRow *row, const char *path)
{
  if (g_str_has_prefix (row->path, ROD_PREFIX))
    return is_rod_path (path, row->path + strlen (ROD_PREFIX));
  return g_str_has_suffix (path, row->path);
}

static char *
name_section (const char *path)
{
  const char *sections = strstr (path, "torsion_bar.sections[");
  unsigned index;
  char member[16] = "";

  if (sections == NULL ||
      sscanf (sections, "torsion_bar.sections[%u].%15[a-z_]", &index, member) < 1)
    return NULL;
  if (g_str_equal (member, "outer_mm"))
    return g_strdup_printf (_ ("Section %u, outer"), index + 1);
  if (g_str_equal (member, "inner_mm"))
    return g_strdup_printf (_ ("Section %u, bore"), index + 1);
  if (g_str_equal (member, "length_mm"))
    return g_strdup_printf (_ ("Section %u, length"), index + 1);
  return g_strdup_printf (_ ("Section %u"), index + 1);
}

static char *
name_whole_path (const char *path)
{
  char *section = name_section (path);

  if (section != NULL)
    return section;
  for (gsize i = 0; i < N_SPRINGS_ROWS; i++)
    if (is_row_path (&springs_rows[i], path))
      return springs_row_full_name (&springs_rows[i]);
  for (gsize i = 0; i < N_SPRINGS_TABLES; i++)
    if (strstr (path, springs_tables[i].path) != NULL)
      return g_strdup (_ (springs_tables[i].name));
  for (gsize i = 0; i < G_N_ELEMENTS (objects); i++)
    if (g_str_has_suffix (path, objects[i].name))
      return g_strdup (springs_group_name (objects[i].group));
  return NULL;
}

static void
note_object (const char *path, const char **inside)
{
  for (gsize i = 0; i < G_N_ELEMENTS (objects); i++)
    if (strstr (path, objects[i].name) != NULL)
      *inside = objects[i].name;
}

char *
springs_name_of_path (const char *path, const char **inside)
{
  if (strpbrk (path, ".[") != NULL || *inside == NULL) {
    note_object (path, inside);
    return name_whole_path (path);
  }

  g_autofree char *whole = g_strconcat (*inside, ".", path, NULL);
  return name_whole_path (whole);
}
