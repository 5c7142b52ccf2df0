/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-caution.h"

#include <glib.h>
#include <glib/gi18n-lib.h>

const char *
spring_caution (void)
{
  return _ ("Estimates for comparison, not a proof of strength. Compressed springs and "
            "wound torsion bars can kill: work on them is for trained hands. Follow the "
            "maker, local rules and licensed practice.");
}
