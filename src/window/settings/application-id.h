/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the desktop and its settings call the program. */

#pragma once

#define SW_APPLICATION_ID "org.strutwright.Strutwright"
