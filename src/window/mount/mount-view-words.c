/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/mount-view-words.h"

#include "kernel/mount-place.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

static char *
angle (const MountPlace *place, Quantity quantity)
{
  char text[32];

  quantity_format_whole (quantity, place->value[quantity], FALSE, text, sizeof text);
  return g_strdup (text);
}

static char *
where_words (MountOffset mount)
{
  g_autofree char *words = bench_mount_words (mount);

  if (mount.inboard == 0.0 && mount.rearward == 0.0 && mount.up == 0.0)
    return g_strdup (_ ("Mount as measured"));
  /* Translators: “Mount 12.0 mm inboard, 6.0 mm rearward”. */
  return g_strdup_printf (_ ("Mount %s"), words);
}

char *
mount_view_words (SwChooser *chooser)
{
  SwBench *bench = sw_chooser_get_bench (chooser);
  const CarSide side = sw_chooser_get_side (chooser);
  const MeasuredCorner corner =
      car_measured_side (sw_document_get_car (sw_bench_get_document (bench)), side);
  const Adjustment adjustment = car_side_adjustment (sw_bench_get_setup (bench), side);
  g_autofree char *where = where_words (adjustment.mount);
  MountPlace place;

  if (mount_place_solve (&corner, &adjustment, adjustment.mount, &place) != POSE_OK)
    return g_strdup_printf (_ ("%s: cannot be assembled"), where);

  g_autofree char *camber = angle (&place, QUANTITY_CAMBER);
  g_autofree char *caster = angle (&place, QUANTITY_CASTER);
  /* Translators: “Mount 12.0 mm inboard, 6.0 mm rearward: camber −1.93°, caster 4.40°”.
   */
  return g_strdup_printf (_ ("%s: camber %s, caster %s"), where, camber, caster);
}
