/* SPDX-License-Identifier: MIT OR Apache-2.0
 *
 * seamwright: layout, fabrication and estimating of standing-seam sheet-metal roofs. The C interface.
 *
 * - A call that can fail returns a status, SW_OK or another number below. Its outputs come after its inputs, none of them may be
 *   NULL, and they are written only when it returns SW_OK.
 * - The last argument of such a call may be NULL. Else it is set on every return: to NULL, or to an error that the caller frees
 *   with sw_error_free.
 * - Text goes in as a pointer and a length in bytes, UTF-8, without a NUL at its end.
 * - Text comes out in the caller's buffer, always ended by a NUL. `*needed`, which may be NULL if there is a buffer, is the size
 *   that holds all of it with the NUL, and is written too when the buffer is too small. A NULL buffer of capacity 0 asks for the
 *   size alone. Arrays come out in the same way.
 * - Inputs are never changed or kept. Nothing is global: any call may run on any thread at any time.
 *
 * The library computes; it does not license. Structural spacing, loads, and fire and weather approvals belong to a licensed
 * engineer, the local code and the panel's own test report.
 */

#ifndef SEAMWRIGHT_H
#define SEAMWRIGHT_H

/* Written by cbindgen from bindings-c/src; edit there, then run: SW_WRITE_HEADER=1 cargo test -p seamwright-c --test header */

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/** The release that this header came with; compare it with `sw_version()`. */
#define SW_VERSION "0.1.0"

/**
 * The number of the C interface that this header describes; compare it with `sw_abi_version()`.
 *
 * It rises when a program built with an older header would no longer run rightly. 0 promises nothing yet.
 */
#define SW_ABI_VERSION 0

/**
 * A refusal: what is wrong, where, with which value, and what would be accepted.
 *
 * A call that refuses stores one where its last argument points; free it with `sw_error_free`. It never changes, so threads
 * may read it at the same time. Free it once, when none does.
 */
typedef struct sw_error sw_error;

/**
 * The flat pattern of a trim. All stations are measured from the start edge, with the upper face up.
 *
 * It never changes, so threads may read it at the same time. Free it with `sw_flat_free`, once, when none does.
 */
typedef struct sw_flat sw_flat;

/**
 * A job worked out: what the shop and the crew work from.
 *
 * It never changes, so threads may read it at the same time. Free it with `sw_packet_free`, once, when none does.
 */
typedef struct sw_packet sw_packet;

/**
 * What every call that can fail returns: `SW_OK`, or one of the numbers below. Numbers never change their meaning; later
 * releases may add some, so treat an unknown number as a failure.
 */
typedef int32_t sw_status;

/**
 * An exact length in picometres: 1 mm is 1000000000, 1 in is 25400000000. Copy, compare and hash it as the number that it is;
 * `{0}` is no length.
 */
typedef struct {
    /**
     * Whole picometres.
     */
    int64_t pm;
} sw_length;

/**
 * A unit of length: one of the `SW_LENGTH_UNIT_` numbers.
 */
typedef int32_t sw_length_unit;

/**
 * Which way a length goes to a whole step: one of the `SW_ROUNDING_` numbers.
 */
typedef int32_t sw_rounding;

/**
 * What kind of quantity a text is: one of the `SW_QUANTITY_` numbers.
 */
typedef int32_t sw_quantity;

/**
 * How a pitch was given: one of the `SW_PITCH_` numbers.
 */
typedef int32_t sw_pitch_form;

/**
 * An angle in degrees.
 */
typedef struct {
    /**
     * Degrees, a finite number.
     */
    double degrees;
} sw_angle;

/**
 * The pitch of a roof plane, kept as given. Make it with `sw_pitch_parse`, `sw_pitch_rise_run` or `sw_pitch_from_angle`; every call
 * checks it again, and refuses one whose unused members are not 0. Members do not tell whether two pitches are equal (6:12 is 1:2):
 * `sw_pitch_compare` does.
 */
typedef struct {
    /**
     * Which members count.
     */
    sw_pitch_form form;
    /**
     * The rise of a ratio.
     */
    sw_length rise;
    /**
     * The level run of a ratio.
     */
    sw_length run;
    /**
     * The angle up from level.
     */
    sw_angle angle;
} sw_pitch;

/**
 * What one side of a hip or valley sees of it.
 */
typedef struct {
    /**
     * In plan, from this side's eave to the line.
     */
    sw_angle plan;
    /**
     * From the plane square to the line's own vertical plane down to this roof plane; negative where the roof rises from it.
     */
    sw_angle backing;
    /**
     * In the roof plane, from this side's eave to the line.
     */
    sw_angle in_plane;
    /**
     * Between this side's seams and the line in the roof plane, signed: positive where, of two seams, the one farther from the corner meets the line
     * farther up the slope. 90 degrees either way is square.
     */
    sw_angle meeting;
    /**
     * True length of the line for each unit of this side's level common run.
     */
    double length_factor;
} sw_corner_side;

/**
 * The geometry of a hip or valley.
 */
typedef struct {
    /**
     * Side 1.
     */
    sw_corner_side first;
    /**
     * Side 2.
     */
    sw_corner_side second;
    /**
     * The slope of the line itself, up from level.
     */
    sw_angle slope;
    /**
     * Between the two planes: under the roof at a hip, on the weather side at a valley.
     */
    sw_angle dihedral;
} sw_corner;

/**
 * One row of the framing square, for two planes of one pitch over a square corner.
 */
typedef struct {
    /**
     * Length down the slope for each foot of common run.
     */
    sw_length common_per_foot;
    /**
     * Length of a hip or valley for each foot of common run.
     */
    sw_length hip_per_foot;
    /**
     * Level run of a hip or valley for each foot of common run; the trade says 17 in.
     */
    sw_length hip_run_per_foot;
    /**
     * The difference in length of two neighbouring jacks at the spacing.
     */
    sw_length jack_difference;
    /**
     * The figure to set against 12 in on the tongue for the side cut of a jack.
     */
    sw_length jack_side_cut;
    /**
     * The figure to set against 12 in on the tongue for the side cut of a hip or valley.
     */
    sw_length hip_side_cut;
    /**
     * Tangent of the backing angle, rise over hip length.
     */
    double backing_ratio;
} sw_framing_row;

/**
 * The size of one bend.
 */
typedef struct {
    /**
     * Thickness of the sheet.
     */
    sw_length thickness;
    /**
     * Radius of the inside face.
     */
    sw_length inside_radius;
    /**
     * How far it is bent, from flat: 90 degrees is square, 180 a hem.
     */
    sw_angle angle;
} sw_bend_size;

/**
 * Which way a bend turns, with the upper face up: one of the `SW_DIRECTION_` numbers.
 */
typedef int32_t sw_direction;

/**
 * A bend in the flat, or the fold of a hem.
 */
typedef struct {
    /**
     * The tangent line towards the start edge.
     */
    sw_length from;
    /**
     * The bend line, halfway between the tangent lines.
     */
    sw_length line;
    /**
     * The tangent line towards the end edge.
     */
    sw_length to;
    /**
     * How far, from flat.
     */
    sw_angle angle;
    /**
     * Which way.
     */
    sw_direction direction;
} sw_flat_bend;

/**
 * The flat part of a leg, or of the return of a hem.
 */
typedef struct {
    /**
     * Where it starts.
     */
    sw_length from;
    /**
     * Where it ends.
     */
    sw_length to;
} sw_flat_leg;

/**
 * A part of the work on a job: one of the `SW_STAGE_` numbers. Later releases may add some.
 */
typedef int32_t sw_stage;

/**
 * Told how far the work is: `done` of `of` things of a stage, and the caller's own `user`. 0 goes on with the work; anything else stops it.
 *
 * It runs on the thread of the call that was given it, and may call the library. It must return: no exception and no `longjmp` may leave it.
 */
typedef int32_t (*sw_progress_fn)(sw_stage stage, size_t done, size_t of, void *user);

/**
 * A packet in a few figures.
 */
typedef struct {
    /**
     * Planes of the roof.
     */
    uint64_t planes;
    /**
     * Lines of the roof.
     */
    uint64_t lines;
    /**
     * Panels as laid.
     */
    uint64_t panels;
    /**
     * Pieces to form: more than panels where end laps divide them.
     */
    uint64_t pieces;
    /**
     * Different order lengths.
     */
    uint64_t lengths;
    /**
     * The shortest order length.
     */
    sw_length shortest;
    /**
     * The longest order length.
     */
    sw_length longest;
    /**
     * Order lengths of all panels together.
     */
    sw_length panel_length;
    /**
     * Length of the coil.
     */
    sw_length coil;
    /**
     * Different trims.
     */
    uint64_t trims;
    /**
     * Stock lengths of trim to buy.
     */
    uint64_t sticks;
    /**
     * Closure pieces.
     */
    uint64_t closures;
    /**
     * Cautions: read them before metal is cut.
     */
    uint64_t cautions;
    /**
     * Rows of fasteners and clips whose spacing an engineer gave.
     */
    uint64_t engineered_rows;
    /**
     * Rows whose spacing nobody engineered.
     */
    uint64_t not_engineered_rows;
    /**
     * Figures among them that rest on memory: to be confirmed before metal is cut.
     */
    uint64_t from_memory;
} sw_summary;

/**
 * The call did what it says, and its outputs are written.
 */
#define SW_OK 0

/**
 * Text that does not follow the notation; `sw_error_span` points at the character. Also text that is not UTF-8.
 */
#define SW_PARSE 1

/**
 * A unit is missing, or is not one for this quantity.
 */
#define SW_UNIT 2

/**
 * A number that is NaN or infinite.
 */
#define SW_NOT_FINITE 3

/**
 * A value outside the range that has a meaning.
 */
#define SW_OUT_OF_RANGE 4

/**
 * Something that is needed and is not there; also a NULL where a pointer is needed.
 */
#define SW_MISSING 5

/**
 * A name or a number that is not known.
 */
#define SW_UNKNOWN 6

/**
 * Two inputs that contradict each other.
 */
#define SW_CONFLICT 7

/**
 * Geometry that cannot be: self-crossing, overlapping, degenerate.
 */
#define SW_GEOMETRY 8

/**
 * A design that cannot be built as asked; the value says by how much it fails.
 */
#define SW_IMPOSSIBLE 9

/**
 * A result too large for its type.
 */
#define SW_OVERFLOW 10

/**
 * A document that is not of the format or version expected.
 */
#define SW_FORMAT 11

/**
 * An input larger or deeper than the stated limit.
 */
#define SW_TOO_LARGE 12

/**
 * The caller asked the work to stop.
 */
#define SW_CANCELLED 13

/**
 * The text did not fit the caller's buffer, which holds its beginning; `*needed` says how many bytes do. No error is made.
 */
#define SW_BUFFER_TOO_SMALL 200

/**
 * A fault of the library itself: please report it.
 */
#define SW_INTERNAL 255

/**
 * 25.4 mm exactly.
 */
#define SW_LENGTH_UNIT_INCH 1

/**
 * 12 inches.
 */
#define SW_LENGTH_UNIT_FOOT 2

/**
 * One thousandth of a metre.
 */
#define SW_LENGTH_UNIT_MILLIMETRE 3

/**
 * One hundredth of a metre.
 */
#define SW_LENGTH_UNIT_CENTIMETRE 4

/**
 * The metre.
 */
#define SW_LENGTH_UNIT_METRE 5

/**
 * One millionth of a metre.
 */
#define SW_LENGTH_UNIT_MICROMETRE 6

/**
 * To the next step that is not smaller.
 */
#define SW_ROUNDING_CEIL 1

/**
 * To the next step that is not greater.
 */
#define SW_ROUNDING_FLOOR 2

/**
 * To the next step away from zero.
 */
#define SW_ROUNDING_AWAY 3

/**
 * To the next step toward zero.
 */
#define SW_ROUNDING_TOWARD 4

/**
 * To the nearest step, a tie to the even one.
 */
#define SW_ROUNDING_HALF_EVEN 5

/**
 * To the nearest step, a tie away from zero.
 */
#define SW_ROUNDING_HALF_AWAY 6

/**
 * A length.
 */
#define SW_QUANTITY_LENGTH 1

/**
 * An angle.
 */
#define SW_QUANTITY_ANGLE 2

/**
 * An area.
 */
#define SW_QUANTITY_AREA 3

/**
 * A volume.
 */
#define SW_QUANTITY_VOLUME 4

/**
 * A mass.
 */
#define SW_QUANTITY_MASS 5

/**
 * A force.
 */
#define SW_QUANTITY_FORCE 6

/**
 * A pressure, or a stress.
 */
#define SW_QUANTITY_PRESSURE 7

/**
 * A force along a line.
 */
#define SW_QUANTITY_LINE_LOAD 8

/**
 * A mass for each area.
 */
#define SW_QUANTITY_SURFACE_MASS 9

/**
 * A mass for each length.
 */
#define SW_QUANTITY_LINE_MASS 10

/**
 * A density.
 */
#define SW_QUANTITY_DENSITY 11

/**
 * A coefficient of linear thermal expansion.
 */
#define SW_QUANTITY_EXPANSION 12

/**
 * A temperature.
 */
#define SW_QUANTITY_TEMPERATURE 13

/**
 * A difference of temperature, never a temperature.
 */
#define SW_QUANTITY_TEMPERATURE_DIFFERENCE 14

/**
 * As a rise and a run.
 */
#define SW_PITCH_RATIO 1

/**
 * As an angle.
 */
#define SW_PITCH_ANGLE 2

/**
 * Closes on the upper face.
 */
#define SW_DIRECTION_UP 1

/**
 * Closes on the lower face.
 */
#define SW_DIRECTION_DOWN 2

/**
 * The planes and lines of the roof.
 */
#define SW_STAGE_ROOF 1

/**
 * The sections of the lines that end panels.
 */
#define SW_STAGE_SECTIONS 2

/**
 * The panels of the planes.
 */
#define SW_STAGE_PANELS 3

/**
 * What lies along the lines.
 */
#define SW_STAGE_LINES 4

/**
 * Clips and movement of the planes.
 */
#define SW_STAGE_CLIPS 5

/**
 * Trims, flat and cut to length.
 */
#define SW_STAGE_TRIMS 6

/**
 * The order.
 */
#define SW_STAGE_ORDER 7

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/**
 * The release of the library that runs, as `1.2.3`: constant text, ended by a NUL, not to be freed.
 */
const char *sw_version(void);

/**
 * The number of the C interface of the library that runs.
 */
uint32_t sw_abi_version(void);

/**
 * Frees an error that a call stored; NULL is left alone. Errors from `sw_error_other_at` go with the one that holds them.
 */
void sw_error_free(sw_error *error);

/**
 * The kind of fault, the same number as the status of the call; `SW_OK` for NULL.
 */
sw_status sw_error_kind(const sw_error *error);

/**
 * What is wrong, without path and value.
 */
sw_status sw_error_message(const sw_error *error, char *buffer, size_t capacity, size_t *needed);

/**
 * The whole error as text: path, message, value, what is accepted, the cure, and a line for each further fault.
 */
sw_status sw_error_text(const sw_error *error, char *buffer, size_t capacity, size_t *needed);

/**
 * Where the fault is: the name of the argument, or the path into a document, as in `roof.planes[3].pitch`. Empty where the
 * only input is at fault.
 */
sw_status sw_error_path(const sw_error *error,
                        char *buffer,
                        size_t capacity,
                        size_t *needed);

/**
 * The offending value as text; none (`*needed` is 0) where the error has none. It may hold a NUL of the input: `*needed` - 1
 * is its length.
 */
sw_status sw_error_value(const sw_error *error,
                         char *buffer,
                         size_t capacity,
                         size_t *needed);

/**
 * What would be accepted; none (`*needed` is 0) where the error does not say.
 */
sw_status sw_error_allowed(const sw_error *error, char *buffer, size_t capacity, size_t *needed);

/**
 * The input that would cure it; none (`*needed` is 0) where none can be named.
 */
sw_status sw_error_cure(const sw_error *error, char *buffer, size_t capacity, size_t *needed);

/**
 * The bytes of the value that the error points at, `*start` to before `*end`; `SW_MISSING`, and nothing written, where it points at none.
 */
sw_status sw_error_span(const sw_error *error,
                        size_t *start,
                        size_t *end);

/**
 * How many further faults the same check found; 0 for NULL.
 */
size_t sw_error_other_count(const sw_error *error);

/**
 * One of the further faults, counted from 0; NULL beyond the last. It belongs to `error`: do not free it, nor read it after that is freed.
 */
const sw_error *sw_error_other_at(const sw_error *error,
                                  size_t index);

/**
 * Reads a length with its unit, in any notation of a tape, a drawing or a spreadsheet: `12'-3 5/8"`, `60.3 mm`.
 */
sw_status sw_length_parse(const char *text, size_t text_len, sw_length *length, sw_error **error);

/**
 * As `sw_length_parse`, with the unit of a number that has none.
 */
sw_status sw_length_parse_in(const char *text,
                             size_t text_len,
                             sw_length_unit unit,
                             sw_length *length,
                             sw_error **error);

/**
 * As `sw_length_parse`, but refuses a value that is not a whole number of picometres.
 */
sw_status sw_length_parse_exact(const char *text, size_t text_len, sw_length *length, sw_error **error);

/**
 * Writes a length in a format, itself text: `mm` (exact), `ft-in/16`, `in/32`, `in.3`, `mm.1 ceil`.
 */
sw_status sw_length_format(sw_length length,
                           const char *format,
                           size_t format_len,
                           char *buffer,
                           size_t capacity,
                           size_t *needed,
                           sw_error **error);

/**
 * The one conversion from a floating-point number, rounded half-even to a picometre. NaN and infinities are refused.
 */
sw_status sw_length_from_f64(double value, sw_length_unit unit, sw_length *length, sw_error **error);

/**
 * A length as a floating-point number of a unit.
 */
sw_status sw_length_get(sw_length length, sw_length_unit unit, double *value, sw_error **error);

/**
 * The total of an array of lengths, exact, checked once at its end. An empty array may be NULL; its total is no length.
 */
sw_status sw_length_sum(const sw_length *lengths, size_t count, sw_length *total, sw_error **error);

/**
 * `length * i / n`, rounded half-even once: the end of the i-th of n equal parts. There is no division that would add up errors.
 */
sw_status sw_length_station(sw_length length,
                            uint32_t i,
                            uint32_t n,
                            sw_length *station,
                            sw_error **error);

/**
 * A length at a whole step of the shop, an excess within the library's tolerance for noise ignored.
 */
sw_status sw_length_round(sw_length length,
                          sw_length increment,
                          sw_rounding direction,
                          sw_length *rounded,
                          sw_error **error);

/**
 * As `sw_length_round`, with the excess to be ignored.
 */
sw_status sw_length_round_tolerating(sw_length length,
                                     sw_length increment,
                                     sw_rounding direction,
                                     sw_length tolerance,
                                     sw_length *rounded,
                                     sw_error **error);

/**
 * Reads a quantity with its unit and gives its number of another unit: `1 square` in `ft2` is 100.
 */
sw_status sw_convert(sw_quantity quantity,
                     const char *text,
                     size_t text_len,
                     const char *unit,
                     size_t unit_len,
                     double *value,
                     sw_error **error);

/**
 * Reads a pitch: `6:12`, `1/4:12`, `150 mm:300 mm` (rise to run), `33.3 %` or `26.5 deg`.
 */
sw_status sw_pitch_parse(const char *text, size_t text_len, sw_pitch *pitch, sw_error **error);

/**
 * A pitch from a rise and the level run over which it rises, both as measured.
 */
sw_status sw_pitch_rise_run(sw_length rise, sw_length run, sw_pitch *pitch, sw_error **error);

/**
 * A pitch from its slope angle, measured up from level: 0 to less than 90 degrees.
 */
sw_status sw_pitch_from_angle(sw_angle angle, sw_pitch *pitch, sw_error **error);

/**
 * Writes a pitch as its canonical text, which `sw_pitch_parse` reads back as the same.
 */
sw_status sw_pitch_text(sw_pitch pitch, char *buffer, size_t capacity, size_t *needed, sw_error **error);

/**
 * The slope angle, measured up from level.
 */
sw_status sw_pitch_angle(sw_pitch pitch, sw_angle *angle, sw_error **error);

/**
 * Rise over run.
 */
sw_status sw_pitch_ratio(sw_pitch pitch, double *ratio, sw_error **error);

/**
 * The rise in percent of the run.
 */
sw_status sw_pitch_percent(sw_pitch pitch, double *percent, sw_error **error);

/**
 * True length down the slope for each unit of level run; also surface for each unit of plan area.
 */
sw_status sw_pitch_slope_factor(sw_pitch pitch, double *factor, sw_error **error);

/**
 * The rise over a level run.
 */
sw_status sw_pitch_rise_over(sw_pitch pitch, sw_length run, sw_length *rise, sw_error **error);

/**
 * The true length down the slope over a level run.
 */
sw_status sw_pitch_slope_length(sw_pitch pitch, sw_length run, sw_length *length, sw_error **error);

/**
 * -1, 0 or 1 where the first pitch is less steep than, as steep as, or steeper than the second; two ratios are compared exactly.
 */
sw_status sw_pitch_compare(sw_pitch first,
                           sw_pitch second,
                           int32_t *order,
                           sw_error **error);

/**
 * Whether a pitch is as steep as a limit or steeper, compared as `sw_pitch_compare` does: 1/4:12 passes a limit of 1/4:12.
 */
sw_status sw_pitch_at_least(sw_pitch pitch,
                            sw_pitch minimum,
                            bool *passes,
                            sw_error **error);

/**
 * The hip or valley where two planes meet over a plan corner. `plan` is the angle between the two eaves on the side where the hip
 * stands, 90 degrees for a square building; a square inner corner with its valley is again 90.
 */
sw_status sw_pitch_corner(sw_pitch first,
                          sw_pitch second,
                          sw_angle plan,
                          sw_corner *corner,
                          sw_error **error);

/**
 * The framing-square row of a pitch, with jacks at this spacing along the eave.
 */
sw_status sw_pitch_framing(sw_pitch pitch, sw_length spacing, sw_framing_row *row, sw_error **error);

/**
 * The nominal thickness of a gauge: `24 ga galvanized`, `16 oz copper`. A gauge without its system is refused.
 */
sw_status sw_metal_gauge_thickness(const char *gauge, size_t gauge_len, sw_length *thickness, sw_error **error);

/**
 * The weight that defines a gauge, as a number of a unit of mass for each area (`lb/ft2`, `kg/m2`); `SW_MISSING` for a gauge that no weight defines.
 */
sw_status sw_metal_gauge_weight(const char *gauge,
                                size_t gauge_len,
                                const char *unit,
                                size_t unit_len,
                                double *weight,
                                sw_error **error);

/**
 * The number of the gauge of a system (`us-standard`, `galvanized`) whose thickness is nearest; for Brown and Sharpe 00, 000, 0000 are -1, -2, -3.
 */
sw_status sw_metal_nearest_gauge(const char *system,
                                 size_t system_len,
                                 sw_length thickness,
                                 int32_t *number,
                                 sw_error **error);

/**
 * The change of a length with a difference of temperature, positive for growth. The expansion and the difference are texts with a
 * unit: `16.8e-6 /K`, `60 degF`.
 */
sw_status sw_movement_length_change(const char *expansion,
                                    size_t expansion_len,
                                    sw_length length,
                                    const char *difference,
                                    size_t difference_len,
                                    sw_length *change,
                                    sw_error **error);

/**
 * tan(A/2): from inside radius plus thickness to the outside setback. The angle is measured from flat.
 */
sw_status sw_trim_setback_factor(sw_angle angle, double *factor, sw_error **error);

/**
 * The compensation value v of DIN 6935, to be subtracted from the sum of the legs: to the outer tangents of the bend from 90 degrees
 * from flat, to the outer corner below.
 */
sw_status sw_trim_din_compensation(sw_bend_size size,
                                   sw_length *compensation,
                                   sw_error **error);

/**
 * The bend allowance: the flat length between the two tangent lines. The rule is JSON: `{"neutral-axis":{"factor":0.4}}`, `"din-6935"`,
 * `{"din-6935-or":{"otherwise":"aviation"}}`, `"din-6935-linear"`, `{"handbook":"soft-steel"}`, `"aviation"`, `{"deductions":{"rows":[...]}}` or
 * `"sharp-corner"`.
 */
sw_status sw_trim_allowance(const char *rule,
                            size_t rule_len,
                            sw_bend_size size,
                            sw_length *allowance,
                            sw_error **error);

/**
 * The bend deduction: what two legs measured to the outer corner are together longer than their flat. The rule is as for `sw_trim_allowance`.
 */
sw_status sw_trim_deduction(const char *rule,
                            size_t rule_len,
                            sw_bend_size size,
                            sw_length *deduction,
                            sw_error **error);

/**
 * Unfolds a profile under a bend rule, both in one JSON object: `{"profile": {...}, "rule": "din-6935"}`. An error's path leads into
 * the JSON: `pattern.profile.legs[1].length`.
 */
sw_status sw_flat_from_json(const char *pattern,
                            size_t pattern_len,
                            sw_flat **flat,
                            sw_error **error);

/**
 * Frees a flat pattern; NULL is left alone.
 */
void sw_flat_free(sw_flat *flat);

/**
 * The width of the blank: the stretch-out.
 */
sw_status sw_flat_girth(const sw_flat *flat, sw_length *girth, sw_error **error);

/**
 * How many bends there are, folds of hems among them; 0 for NULL.
 */
size_t sw_flat_bend_count(const sw_flat *flat);

/**
 * How many flat parts there are, returns of hems among them: one more than the bends; 0 for NULL.
 */
size_t sw_flat_leg_count(const sw_flat *flat);

/**
 * One of the bends, counted from 0 at the start edge; `SW_OUT_OF_RANGE` beyond the last.
 */
sw_status sw_flat_bend_at(const sw_flat *flat, size_t index, sw_flat_bend *bend, sw_error **error);

/**
 * One of the flat parts, counted from 0 at the start edge; `SW_OUT_OF_RANGE` beyond the last.
 */
sw_status sw_flat_leg_at(const sw_flat *flat, size_t index, sw_flat_leg *leg, sw_error **error);

/**
 * The name of the rule of every bend that has none of its own.
 */
sw_status sw_flat_rule_name(const sw_flat *flat, char *buffer, size_t capacity, size_t *needed, sw_error **error);

/**
 * The girths of one profile, each with a thickness and an inside radius of its own, unrounded.
 *
 * The profile and its rule are one JSON object, as for `sw_flat_from_json`. Every bend takes the element's radius in place of its own, hems keep theirs.
 * All three arrays have `count` elements, and each has its unit. The first element that cannot be folded is refused at `elements[i]`, and
 * then nothing is written. `girths` may be one of the two arrays that go in.
 */
sw_status sw_trim_girths(const char *pattern,
                         size_t pattern_len,
                         const double *thickness,
                         sw_length_unit thickness_unit,
                         const double *inside_radius,
                         sw_length_unit inside_radius_unit,
                         size_t count,
                         sw_length_unit girth_unit,
                         double *girths,
                         sw_error **error);

/**
 * Stations at equal spaces, the fewest that keep each at or under the maximum on centre; the first and the last stand at the end distance.
 *
 * `stations` receives as many as `capacity` allows, each measured from the start of the run; `*needed` is how many there are, and
 * is written too when the array is too small (`SW_BUFFER_TOO_SMALL`, no error). A NULL array of capacity 0 asks for the number alone.
 * The path of a refused maximum is the core's: `rule.maximum`.
 */
sw_status sw_spacing_equal(sw_length run,
                           sw_length end_distance,
                           sw_length maximum,
                           sw_length *stations,
                           size_t capacity,
                           size_t *needed,
                           sw_error **error);

/**
 * The names of all calculations, one a line, by floor and room: `spacing.spacing`, `closure.closure-bay`.
 */
sw_status sw_calculation_names(char *buffer, size_t capacity, size_t *needed, sw_error **error);

/**
 * Computes the calculation with this name: its result as JSON. The input is JSON of at most 16 MiB with the fields of core's type in snake_case,
 * choices in kebab-case, quantities as text with their unit; an unknown field is refused. An error's path is `name`, or leads into the
 * input: `input.rule.fixed.spacing`.
 *
 * Asking for the size alone computes too: a buffer of some kilobytes saves most callers the second call.
 */
sw_status sw_compute_json(const char *name,
                          size_t name_len,
                          const char *input,
                          size_t input_len,
                          char *buffer,
                          size_t capacity,
                          size_t *needed,
                          sw_error **error);

/**
 * As `sw_compute_json`, with the working: `{"out": ..., "worksheet": {"title": ..., "entries": [...]}}`. An entry is `{"step": {...}}` or, with
 * entries of its own, `{"part": {...}}`.
 */
sw_status sw_explain_json(const char *name,
                          size_t name_len,
                          const char *input,
                          size_t input_len,
                          char *buffer,
                          size_t capacity,
                          size_t *needed,
                          sw_error **error);

/**
 * The names of all drawings and pages that `sw_drawing_json` makes, one a line.
 */
sw_status sw_drawing_names(char *buffer, size_t capacity, size_t *needed, sw_error **error);

/**
 * The drawing or page with this name, as SVG, HTML or DXF: `roof.roof-plan` is the plan of a roof with its panels, `roof.measuring-page` the sheet of
 * what to measure on it, `trim.drawn-trim` a trim folded or flat and `trim.drawn-blank` a blank, as SVG or as the text of a DXF file. The input is JSON as of
 * `sw_compute_json`, with the fields of core's type of that name in the room `export`.
 */
sw_status sw_drawing_json(const char *name,
                          size_t name_len,
                          const char *input,
                          size_t input_len,
                          char *buffer,
                          size_t capacity,
                          size_t *needed,
                          sw_error **error);

/**
 * The name of a stage for people: `panels`. `SW_UNKNOWN` for a number of none.
 */
sw_status sw_stage_name(sw_stage stage, char *buffer, size_t capacity, size_t *needed, sw_error **error);

/**
 * Works out the job that a JSON document of at most 64 MiB describes. An error's path leads into the document: `job.roof.planes[3].name`; where the
 * text is not JSON, its span points at the character.
 *
 * `progress` is told how far the work is, with `user`, and may stop it: the status is then `SW_CANCELLED`. It may be NULL. Free the packet with
 * `sw_packet_free`.
 */
sw_status sw_job_packet(const char *job,
                        size_t job_len,
                        sw_progress_fn progress,
                        void *user,
                        sw_packet **packet,
                        sw_error **error);

/**
 * Frees a packet; NULL is left alone.
 */
void sw_packet_free(sw_packet *packet);

/**
 * The packet in a few figures.
 */
sw_status sw_packet_summary(const sw_packet *packet, sw_summary *summary, sw_error **error);

/**
 * The whole packet as JSON: fields in snake_case, choices in kebab-case, quantities as text with their unit. It is written once and kept with the
 * packet, so that asking for the size first costs little.
 */
sw_status sw_packet_json(const sw_packet *packet,
                         char *buffer,
                         size_t capacity,
                         size_t *needed,
                         sw_error **error);

/**
 * How many files the packet has: `packet.json`, lists, the plan, crew sheets, junctions, trims, and papers with the working for the office. They are
 * made when first asked for, and kept with the packet; nothing is written to a disk.
 */
sw_status sw_packet_file_count(const sw_packet *packet,
                               size_t *count,
                               sw_error **error);

/**
 * The name of a file, counted from 0: `lists/panels.csv`, its folders parted by `/`. `SW_OUT_OF_RANGE` beyond the last.
 */
sw_status sw_packet_file_name(const sw_packet *packet,
                              size_t index,
                              char *buffer,
                              size_t capacity,
                              size_t *needed,
                              sw_error **error);

/**
 * What a file holds, counted from 0, by the rules of arrays: `*needed` is its size in bytes. `SW_OUT_OF_RANGE` beyond the last.
 */
sw_status sw_packet_file_bytes(const sw_packet *packet,
                               size_t index,
                               uint8_t *bytes,
                               size_t capacity,
                               size_t *needed,
                               sw_error **error);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* SEAMWRIGHT_H */
