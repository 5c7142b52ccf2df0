/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the recovery only: where copies lie and what their key files say. */

#pragma once

#include "model/document/recovery.h"

#define RECOVERY_SUFFIX ".swcar"
#define RECOVERY_KEY_SUFFIX ".key" /* takes the place of the other one */
#define RECOVERY_GROUP "Copy"
#define RECOVERY_FILE "File" /* URI of the user's file; missing when there is none */
#define RECOVERY_STAMP "Stamp"
#define RECOVERY_PROCESS "Process"
#define RECOVERY_STARTED "Started"

char *recovery_folder (void);
/* The key file's path beside the copy at @copy, which ends in RECOVERY_SUFFIX. */
char *recovery_key_path (const char *copy);
