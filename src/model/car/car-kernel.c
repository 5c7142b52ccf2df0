/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A car handed to the kernel: mm and radians, the right side mirrored to the left. */

#include "model/car/car.h"

#define DEGREE (G_PI / 180.0)
#define GPA 1000.0 /* N/mm² */

static double
dive_lever (const CarBody *body)
{
  return body->front_brake_share * body->wheelbase_mm / body->cg_height_mm;
}

MeasuredCorner
car_measured_corner (const Car *car)
{
  MeasuredCorner corner = { .camber = car->camber_deg * DEGREE,
                            .toe_in = car->toe_in_deg * DEGREE,
                            .loaded_radius = car->loaded_radius_mm,
                            .dive_lever = dive_lever (&car->body) };

  for (PointName i = 0; i < N_POINTS; i++)
    corner.at[i] = car->points[i];
  return corner;
}

gboolean
car_has_right (const Car *car)
{
  return car->right.has_points || car->right.has_alignment;
}

MeasuredCorner
car_measured_side (const Car *car, CarSide side)
{
  MeasuredCorner corner = car_measured_corner (car);
  const CarMeasuredRight *right = &car->right;

  if (side == SIDE_LEFT)
    return corner;
  if (right->has_points)
    for (PointName i = 0; i < N_POINTS; i++) {
      const Vec3 p = right->points[i];

      corner.at[i] = (Vec3){ p.x, -p.y, p.z };
    }
  if (right->has_alignment) {
    corner.camber = right->camber_deg * DEGREE;
    corner.toe_in = right->toe_in_deg * DEGREE;
  }
  return corner;
}

Adjustment
car_adjustment (const CarSetup *setup)
{
  const CarCorrections *c = &setup->corrections;

  return (Adjustment){ .mount = setup->mount,
                       .lowering = setup->lowering_mm,
                       .toe = setup->toe,
                       .corrections = { .clamp_tilt = c->camber_bolt_deg * DEGREE,
                                        .ball_joint_spacer = c->ball_joint_spacer_mm,
                                        .tie_rod_end_spacer = c->tie_rod_end_spacer_mm,
                                        .front_pivot_raise = c->front_pivot_raise_mm,
                                        .rear_pivot_raise = c->rear_pivot_raise_mm,
                                        .pivot_outboard = c->pivot_outboard_mm,
                                        .rack_raise = c->rack_raise_mm,
                                        .tie_rod_lengthening = c->tie_rod_length_mm,
                                        .wheel_spacer = c->wheel_spacer_mm } };
}

Adjustment
car_side_adjustment (const CarSetup *setup, CarSide side)
{
  Adjustment adjustment = car_adjustment (setup);

  if (side == SIDE_RIGHT && setup->right.is_own) {
    adjustment.mount = setup->right.mount;
    adjustment.corrections.clamp_tilt = setup->right.camber_bolt_deg * DEGREE;
  }
  return adjustment;
}

gboolean
car_sides_differ (const Car *car, guint setup)
{
  return car_has_right (car) || car_setup (car, setup)->right.is_own;
}

TyreShape
car_tyre_shape (const Car *car)
{
  const double unloaded = car->unloaded_radius_mm > 0.0
                              ? car->unloaded_radius_mm
                              : car->loaded_radius_mm * (1.0 + CAR_TYRE_SQUASH);

  return (TyreShape){ .unloaded_radius = unloaded,
                      .section_width = car->section_width_mm };
}

static gboolean
has_tube (const CarStrut *strut)
{
  return strut->tube_diameter_mm > 0.0 && strut->tube_top_mm != 0.0 &&
         strut->tube_top_mm > strut->tube_bottom_mm;
}

static gboolean
has_seat (const CarStrut *strut)
{
  return strut->seat_diameter_mm > 0.0 && strut->seat_height_mm != 0.0;
}

static gboolean
has_spring (const CarStrut *strut)
{
  return strut->spring_diameter_mm > 0.0 && strut->seat_height_mm != 0.0;
}

/* 0 where wire or mean diameter are not given, or the perch. */
static double
coil_diameter (const CarCoil *coil)
{
  return coil->is_there && coil->wire_mm > 0.0 && coil->mean_diameter_mm > 0.0 &&
                 coil->perch_mm != 0.0
             ? coil->mean_diameter_mm + coil->wire_mm
             : 0.0;
}

/* With the helper on top of it; 0 where either is not known. */
static double
free_length (const CarSprings *springs)
{
  const CarHelper *helper = &springs->helper;
  const double coil = springs->coil.free_length_mm;

  if (!helper->is_there || helper->place != HELPER_IN_SERIES)
    return coil;
  return coil > 0.0 && helper->free_length_mm > 0.0 ? coil + helper->free_length_mm : 0.0;
}

static void
put_coil (const CarSprings *springs, StrutShape *shape)
{
  const CarCoil *coil = &springs->coil;

  shape->seat_height = coil->perch_mm;
  shape->spring_radius = coil_diameter (coil) / 2.0;
  shape->spring_drop = coil->upper_drop_mm;
  shape->spring_free = free_length (springs);
  shape->lower_outboard = coil->lower_outboard_mm;
  shape->lower_forward = coil->lower_forward_mm;
  shape->upper_outboard = coil->upper_outboard_mm;
  shape->upper_forward = coil->upper_forward_mm;
}

StrutShape
car_strut_shape (const Car *car)
{
  const CarStrut *s = &car->strut;
  StrutShape shape = { .tube_radius = has_tube (s) ? s->tube_diameter_mm / 2.0 : 0.0,
                       .tube_bottom = s->tube_bottom_mm,
                       .tube_top = s->tube_top_mm,
                       .seat_radius = has_seat (s) ? s->seat_diameter_mm / 2.0 : 0.0,
                       .seat_height = s->seat_height_mm,
                       .spring_radius =
                           has_spring (s) ? s->spring_diameter_mm / 2.0 : 0.0 };

  if (!has_seat (s) && !has_spring (s) && coil_diameter (&car->springs.coil) > 0.0)
    put_coil (&car->springs, &shape);
  return shape;
}

/* What the measured seat was made for. */
static double
measured_spring_diameter (const Car *car)
{
  return has_spring (&car->strut) ? car->strut.spring_diameter_mm
                                  : coil_diameter (&car->springs.coil);
}

StrutShape
car_setup_strut_shape (const Car *car, guint index)
{
  const CarSetup *setup = car_setup (car, index);
  StrutShape shape = car_strut_shape (car);
  const double diameter = setup->has_springs ? coil_diameter (&setup->springs.coil) : 0.0;

  if (diameter <= 0.0)
    return shape;
  if (fabs (diameter - measured_spring_diameter (car)) > CAR_SAME_SEAT)
    shape.seat_radius = 0.0;
  put_coil (&setup->springs, &shape);
  return shape;
}

static gboolean
is_there (const StrutShape *shape)
{
  return shape->tube_radius > 0.0 || shape->seat_radius > 0.0 ||
         shape->spring_radius > 0.0;
}

gboolean
car_has_strut_shape (const Car *car)
{
  const StrutShape shape = car_strut_shape (car);

  return is_there (&shape);
}

gboolean
car_setup_has_strut_shape (const Car *car, guint index)
{
  const StrutShape shape = car_setup_strut_shape (car, index);

  return is_there (&shape);
}

Rod
car_rod (const Car *car, const CarRod *rod)
{
  const double guide =
      rod->guide_height_mm != 0.0 ? rod->guide_height_mm : car->strut.tube_top_mm;

  return (Rod){ .outer = rod->diameter_mm,
                .inner = rod->bore_mm,
                .modulus = rod->modulus_gpa * GPA,
                .guide_height = guide,
                .piston_drop = rod->piston_drop_mm,
                .bush_spacing = rod->bush_spacing_mm,
                .friction = rod->friction };
}

/* Half-way out from the hinge axis to the ball joint. */
static Vec3
middle_of_arm (const Vec3 *at)
{
  const Vec3 hinge = vec3_sub (at[POINT_ARM_REAR_PIVOT], at[POINT_ARM_FRONT_PIVOT]);
  const Vec3 arm = vec3_sub (at[POINT_BALL_JOINT], at[POINT_ARM_FRONT_PIVOT]);
  const double along = vec3_dot (arm, hinge) / vec3_dot (hinge, hinge);
  const Vec3 foot = vec3_along (at[POINT_ARM_FRONT_PIVOT], along, hinge);

  return vec3_scale (vec3_add (foot, at[POINT_BALL_JOINT]), 0.5);
}

static Vec3
link_point (const Car *car, const CarAntiRollBar *bar)
{
  if (bar->has_link_point)
    return bar->link_point;
  return bar->link_carrier == LINK_ON_STRUT ? car->points[POINT_STRUT_FOOT]
                                            : middle_of_arm (car->points);
}

SpringPlaces
car_spring_places (const Car *car, const CarSprings *springs)
{
  const CarCoil *coil = &springs->coil;

  return (SpringPlaces){ .seats = { .perch = coil->perch_mm,
                                    .upper_drop = coil->upper_drop_mm,
                                    .lower_outboard = coil->lower_outboard_mm,
                                    .lower_forward = coil->lower_forward_mm,
                                    .upper_outboard = coil->upper_outboard_mm,
                                    .upper_forward = coil->upper_forward_mm },
                         .link_carrier =
                             (LinkCarrier) springs->anti_roll_bar.link_carrier,
                         .link_point = link_point (car, &springs->anti_roll_bar) };
}
