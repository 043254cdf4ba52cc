/* Runs the reference cases, flattened to a line each:
 *
 *     op|name|key=value|...|>key=value|...|~key=tolerance|...|!
 *
 * `>` marks an expected output, `~` its absolute tolerance, `!` a case whose print is wrong and which must not match. In values, `%`,
 * `|`, `=` and a new line are written %25, %7C, %3D and %0A. A case that expects `>refused=KIND` must be refused with that kind,
 * and at the path of `>refused_at`, if it has one.
 *
 * An operation that is none of those below is a calculation, run by its name: its input is the JSON of the field `{`, and the names of
 * its outputs are paths into the result, or `worksheet.steps[N]` for what a step of its worksheet gives.
 *
 * Outputs compare as quantities: a length by its picometres, a number by its value and unit, a quantity in another unit by what it is in the
 * unit that the library holds, the rest as text.
 */
#include "seamwright.h"
#include "json_step.h"
#include <float.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_FIELDS = 64, MOST_OUTPUTS = 16, TEXT_SIZE = 256, WHY_SIZE = 1024 };

typedef struct {
    char kind; /* ' ' an input, '>' an expected output, '~' a tolerance */
    const char *key, *value;
} field;

typedef enum { A_LENGTH, A_NUMBER, A_TEXT, WRITTEN } form; /* written: text that may be a quantity */

typedef struct {
    const char *key;
    form form;
    sw_length length;
    double number;
    const char *unit;
    char text[TEXT_SIZE];
} output;

typedef struct {
    const char *op, *name;
    field fields[MOST_FIELDS];
    size_t count;
    bool deviates;
    output outputs[MOST_OUTPUTS];
    size_t output_count;
    const char *broken; /* what is wrong with the case itself */
    sw_error *error;
} test_case;

static const char *value_of(const test_case *c, char kind, const char *key)
{
    size_t i;
    for (i = 0; i < c->count; i++)
        if (c->fields[i].kind == kind && strcmp(c->fields[i].key, key) == 0) return c->fields[i].value;
    return NULL;
}

static const char *input(test_case *c, const char *key)
{
    const char *value = value_of(c, ' ', key);
    if (!value) {
        c->broken = key;
        return "";
    }
    return value;
}

/* Outputs. */

static output *put(test_case *c, const char *key, form f)
{
    output *o = &c->outputs[c->output_count < MOST_OUTPUTS - 1 ? c->output_count++ : MOST_OUTPUTS - 1];
    o->key = key;
    o->form = f;
    return o;
}

static sw_status put_length(test_case *c, const char *key, sw_length l)
{
    put(c, key, A_LENGTH)->length = l;
    return SW_OK;
}

static sw_status put_number(test_case *c, const char *key, double number, const char *unit)
{
    output *o = put(c, key, A_NUMBER);
    o->number = number;
    o->unit = unit;
    return SW_OK;
}

static sw_status put_text(test_case *c, const char *key, const char *text)
{
    output *o = put(c, key, A_TEXT);
    strncpy(o->text, text, TEXT_SIZE - 1);
    o->text[TEXT_SIZE - 1] = '\0';
    return SW_OK;
}

static sw_status put_written(test_case *c, const char *key, const char *text)
{
    put_text(c, key, text);
    c->outputs[c->output_count - 1].form = WRITTEN;
    return SW_OK;
}

/* Inputs. A call leaves its refusal in the case. */

static sw_status length_in(test_case *c, const char *key, sw_length *l)
{
    const char *text = input(c, key);
    return sw_length_parse(text, strlen(text), l, &c->error);
}

static sw_status pitch_in(test_case *c, const char *key, sw_pitch *p)
{
    const char *text = input(c, key);
    return sw_pitch_parse(text, strlen(text), p, &c->error);
}

static sw_status angle_in(test_case *c, const char *key, sw_angle *angle)
{
    const char *text = input(c, key);
    return sw_convert(SW_QUANTITY_ANGLE, text, strlen(text), "deg", 3, &angle->degrees, &c->error);
}

static sw_status number_in(test_case *c, const char *key, unsigned long most, uint32_t *n)
{
    const char *text = input(c, key);
    char *end;
    unsigned long value = strtoul(text, &end, 10);
    if (end == text || *end || value > most) c->broken = key;
    *n = (uint32_t)value;
    return SW_OK;
}

typedef struct {
    const char *name;
    int32_t number;
} named;

static const named QUANTITIES[] = {
    {"length", SW_QUANTITY_LENGTH},
    {"angle", SW_QUANTITY_ANGLE},
    {"area", SW_QUANTITY_AREA},
    {"volume", SW_QUANTITY_VOLUME},
    {"mass", SW_QUANTITY_MASS},
    {"force", SW_QUANTITY_FORCE},
    {"pressure", SW_QUANTITY_PRESSURE},
    {"line-load", SW_QUANTITY_LINE_LOAD},
    {"surface-mass", SW_QUANTITY_SURFACE_MASS},
    {"line-mass", SW_QUANTITY_LINE_MASS},
    {"density", SW_QUANTITY_DENSITY},
    {"expansion", SW_QUANTITY_EXPANSION},
    {"temperature", SW_QUANTITY_TEMPERATURE},
    {"temperature-difference", SW_QUANTITY_TEMPERATURE_DIFFERENCE},
    {NULL, 0},
};
static const named ROUNDINGS[] = {
    {"ceil", SW_ROUNDING_CEIL},          {"floor", SW_ROUNDING_FLOOR},
    {"away", SW_ROUNDING_AWAY},          {"toward", SW_ROUNDING_TOWARD},
    {"half-even", SW_ROUNDING_HALF_EVEN}, {"half-away", SW_ROUNDING_HALF_AWAY},
    {NULL, 0},
};
static const named KINDS[] = {
    {"parse", SW_PARSE},           {"unit", SW_UNIT},           {"not finite", SW_NOT_FINITE}, {"out of range", SW_OUT_OF_RANGE},
    {"missing", SW_MISSING},       {"unknown", SW_UNKNOWN},     {"conflict", SW_CONFLICT},     {"geometry", SW_GEOMETRY},
    {"impossible", SW_IMPOSSIBLE}, {"overflow", SW_OVERFLOW},   {"format", SW_FORMAT},         {"too large", SW_TOO_LARGE},
    {"cancelled", SW_CANCELLED},   {"internal", SW_INTERNAL},   {NULL, 0},
};

/* The number of a name; 0, which no call accepts, for one that is not known. */
static int32_t number_of(const named *table, const char *name)
{
    while (table->name && strcmp(table->name, name) != 0) table++;
    return table->number;
}

/* Operations. */

#define TRY(call)                            \
    do {                                     \
        sw_status tried = (call);            \
        if (tried != SW_OK) return tried;    \
    } while (0)

static sw_status length_parse(test_case *c)
{
    sw_length l;
    TRY(length_in(c, "text", &l));
    return put_length(c, "length", l);
}

static sw_status length_format(test_case *c)
{
    const char *format = input(c, "format");
    char text[TEXT_SIZE];
    sw_length l;
    TRY(length_in(c, "length", &l));
    TRY(sw_length_format(l, format, strlen(format), text, sizeof text, NULL, &c->error));
    return put_text(c, "text", text);
}

static sw_status length_round(test_case *c)
{
    sw_length l, increment;
    TRY(length_in(c, "length", &l));
    TRY(length_in(c, "increment", &increment));
    TRY(sw_length_round(l, increment, number_of(ROUNDINGS, input(c, "rounding")), &l, &c->error));
    return put_length(c, "length", l);
}

static sw_status length_station(test_case *c)
{
    sw_length l;
    uint32_t i, n;
    TRY(length_in(c, "length", &l));
    TRY(number_in(c, "i", UINT32_MAX, &i));
    TRY(number_in(c, "n", UINT32_MAX, &n));
    TRY(sw_length_station(l, i, n, &l, &c->error));
    return put_length(c, "length", l);
}

static sw_status convert(test_case *c)
{
    const char *text = input(c, "value"), *unit = input(c, "unit");
    double value;
    TRY(sw_convert(number_of(QUANTITIES, input(c, "quantity")), text, strlen(text), unit, strlen(unit), &value, &c->error));
    return put_number(c, "value", value, "");
}

static sw_status pitch_angle(test_case *c)
{
    sw_pitch p;
    sw_angle angle;
    TRY(pitch_in(c, "pitch", &p));
    TRY(sw_pitch_angle(p, &angle, &c->error));
    return put_number(c, "angle", angle.degrees, "deg");
}

static sw_status pitch_slope_factor(test_case *c)
{
    sw_pitch p;
    double factor;
    TRY(pitch_in(c, "pitch", &p));
    TRY(sw_pitch_slope_factor(p, &factor, &c->error));
    return put_number(c, "factor", factor, "");
}

static sw_status pitch_corner(test_case *c)
{
    sw_pitch first, second;
    sw_angle plan;
    sw_corner corner;
    TRY(pitch_in(c, "first", &first));
    TRY(pitch_in(c, "second", &second));
    TRY(angle_in(c, "plan", &plan));
    TRY(sw_pitch_corner(first, second, plan, &corner, &c->error));
    put_number(c, "plan_first", corner.first.plan.degrees, "deg");
    put_number(c, "plan_second", corner.second.plan.degrees, "deg");
    put_number(c, "slope", corner.slope.degrees, "deg");
    put_number(c, "backing_first", corner.first.backing.degrees, "deg");
    put_number(c, "backing_second", corner.second.backing.degrees, "deg");
    put_number(c, "dihedral", corner.dihedral.degrees, "deg");
    put_number(c, "in_plane_first", corner.first.in_plane.degrees, "deg");
    put_number(c, "in_plane_second", corner.second.in_plane.degrees, "deg");
    put_number(c, "factor", corner.first.length_factor, "");
    put_number(c, "factor_first", corner.first.length_factor, "");
    return put_number(c, "factor_second", corner.second.length_factor, "");
}

static sw_status pitch_percent(test_case *c)
{
    sw_pitch p;
    double percent;
    TRY(pitch_in(c, "pitch", &p));
    TRY(sw_pitch_percent(p, &percent, &c->error));
    return put_number(c, "percent", percent, "");
}

static sw_status pitch_slope_length(test_case *c)
{
    sw_pitch p;
    sw_length run, length;
    TRY(pitch_in(c, "pitch", &p));
    TRY(length_in(c, "run", &run));
    TRY(sw_pitch_slope_length(p, run, &length, &c->error));
    return put_length(c, "length", length);
}

static sw_status pitch_framing(test_case *c)
{
    sw_pitch p;
    sw_length spacing;
    sw_framing_row row;
    TRY(pitch_in(c, "pitch", &p));
    TRY(length_in(c, "spacing", &spacing));
    TRY(sw_pitch_framing(p, spacing, &row, &c->error));
    put_length(c, "common_per_foot", row.common_per_foot);
    put_length(c, "hip_per_foot", row.hip_per_foot);
    put_length(c, "hip_run_per_foot", row.hip_run_per_foot);
    put_length(c, "jack_difference", row.jack_difference);
    put_length(c, "jack_side_cut", row.jack_side_cut);
    return put_length(c, "hip_side_cut", row.hip_side_cut);
}

static sw_status metal_gauge(test_case *c)
{
    const char *gauge = input(c, "gauge");
    char text[TEXT_SIZE];
    sw_length thickness;
    double weight;
    sw_status status;
    TRY(sw_metal_gauge_thickness(gauge, strlen(gauge), &thickness, &c->error));
    put_length(c, "thickness", thickness);
    /* A gauge that no weight defines has the one output alone. */
    status = sw_metal_gauge_weight(gauge, strlen(gauge), "lb/ft2", 6, &weight, NULL);
    if (status != SW_OK) return status == SW_MISSING ? SW_OK : status;
    snprintf(text, sizeof text, "%.17g lb/ft2", weight);
    return put_written(c, "weight", text);
}

static sw_status metal_nearest_gauge(test_case *c)
{
    const char *system = input(c, "system"), *gauge = input(c, "gauge");
    sw_length thickness;
    int32_t number;
    TRY(sw_metal_gauge_thickness(gauge, strlen(gauge), &thickness, &c->error));
    TRY(sw_metal_nearest_gauge(system, strlen(system), thickness, &number, &c->error));
    return put_number(c, "number", number, "");
}

static sw_status movement_length_change(test_case *c)
{
    const char *expansion = input(c, "expansion"), *difference = input(c, "difference");
    sw_length length, change;
    TRY(length_in(c, "length", &length));
    TRY(sw_movement_length_change(expansion, strlen(expansion), length, difference, strlen(difference), &change, &c->error));
    return put_length(c, "change", change);
}

static sw_status trim_setback_factor(test_case *c)
{
    sw_angle angle;
    double factor;
    TRY(angle_in(c, "angle", &angle));
    TRY(sw_trim_setback_factor(angle, &factor, &c->error));
    return put_number(c, "factor", factor, "");
}

static sw_status size_in(test_case *c, sw_bend_size *size)
{
    TRY(length_in(c, "thickness", &size->thickness));
    TRY(length_in(c, "inside_radius", &size->inside_radius));
    return angle_in(c, "angle", &size->angle);
}

/* A rule of the cases (its name, then its figure or its metal) as the JSON that the library reads. */
static void rule_in(test_case *c, char *json)
{
    const char *text = input(c, "rule"), *argument = strchr(text, ' ');
    int name = argument ? (int)(argument - text) : (int)strlen(text);
    if (!argument) snprintf(json, TEXT_SIZE, "\"%s\"", text);
    else if (strncmp(text, "neutral-axis ", 13) == 0) snprintf(json, TEXT_SIZE, "{\"%.*s\":{\"factor\":%s}}", name, text, argument + 1);
    else snprintf(json, TEXT_SIZE, "{\"%.*s\":\"%s\"}", name, text, argument + 1);
}

static sw_status trim_din_compensation(test_case *c)
{
    sw_bend_size size;
    sw_length compensation;
    TRY(size_in(c, &size));
    TRY(sw_trim_din_compensation(size, &compensation, &c->error));
    return put_length(c, "compensation", compensation);
}

static sw_status trim_allowance(test_case *c)
{
    char rule[TEXT_SIZE];
    sw_bend_size size;
    sw_length allowance;
    rule_in(c, rule);
    TRY(size_in(c, &size));
    TRY(sw_trim_allowance(rule, strlen(rule), size, &allowance, &c->error));
    return put_length(c, "allowance", allowance);
}

static sw_status trim_deduction(test_case *c)
{
    char rule[TEXT_SIZE];
    sw_bend_size size;
    sw_length deduction;
    rule_in(c, rule);
    TRY(size_in(c, &size));
    TRY(sw_trim_deduction(rule, strlen(rule), size, &deduction, &c->error));
    return put_length(c, "deduction", deduction);
}

static sw_status pitch_at_least(test_case *c)
{
    sw_pitch p, minimum;
    bool passes;
    TRY(pitch_in(c, "pitch", &p));
    TRY(pitch_in(c, "minimum", &minimum));
    TRY(sw_pitch_at_least(p, minimum, &passes, &c->error));
    return put_text(c, "passes", passes ? "true" : "false");
}

static const struct {
    const char *op;
    sw_status (*run)(test_case *);
} OPS[] = {
    {"units.length.parse", length_parse},
    {"units.length.format", length_format},
    {"units.length.round", length_round},
    {"units.length.station", length_station},
    {"units.convert", convert},
    {"pitch.angle", pitch_angle},
    {"pitch.slope_factor", pitch_slope_factor},
    {"pitch.corner", pitch_corner},
    {"pitch.at_least", pitch_at_least},
    {"pitch.percent", pitch_percent},
    {"pitch.slope_length", pitch_slope_length},
    {"pitch.framing", pitch_framing},
    {"metal.gauge", metal_gauge},
    {"metal.nearest_gauge", metal_nearest_gauge},
    {"movement.length_change", movement_length_change},
    {"trim.setback_factor", trim_setback_factor},
    {"trim.din_compensation", trim_din_compensation},
    {"trim.allowance", trim_allowance},
    {"trim.deduction", trim_deduction},
};

/* Calculations by their names. */

typedef sw_status run_json(const char *, size_t, const char *, size_t, char *, size_t, size_t *, sw_error **);

/* A calculation's JSON, to be freed; asked for with too small a buffer first. */
static sw_status json_of(test_case *c, run_json *run, const char *json, char **out)
{
    size_t needed = 0;
    sw_status status = run(c->op, strlen(c->op), json, strlen(json), NULL, 0, &needed, &c->error);
    if (status != SW_OK) return status;
    *out = malloc(needed);
    if (!*out) return SW_INTERNAL;
    return run(c->op, strlen(c->op), json, strlen(json), *out, needed, NULL, &c->error);
}

static sw_status calculation(test_case *c)
{
    static const char STEPS[] = "worksheet.steps[";
    const char *json = input(c, "{"), *explained;
    char *result = NULL, *document = NULL, text[TEXT_SIZE];
    sw_status status = json_of(c, sw_compute_json, json, &result);
    size_t i;
    if (status == SW_OK) status = json_of(c, sw_explain_json, json, &document);
    if (status == SW_OK) {
        explained = json_field(document, "out", 3);
        if (!explained || strncmp(explained, result, strlen(result)) != 0) c->broken = "an explanation with another result";
        for (i = 0; i < c->count; i++) {
            const char *path = c->fields[i].key, *from = result;
            bool found;
            if (c->fields[i].kind != '>') continue;
            if (strncmp(path, STEPS, sizeof STEPS - 1) == 0) {
                size_t number = strtoul(path + sizeof STEPS - 1, NULL, 10);
                from = json_step(json_field(document, "worksheet", 9), &number);
                found = from && json_at(from, "result", text, sizeof text);
            } else {
                found = json_at(from, path, text, sizeof text);
            }
            if (found) put_written(c, path, text);
        }
    }
    free(result);
    free(document);
    return status;
}

/* Comparison. Each gives whether an output is as expected, and says why not into `why`. */

static bool same_length(const char *expected, const char *tolerance, sw_length got, char *why)
{
    sw_length e = {0}, t = {0};
    int64_t low, high;
    if (sw_length_parse(expected, strlen(expected), &e, NULL) != SW_OK) {
        snprintf(why, WHY_SIZE, "%s is not a length", expected);
        return false;
    }
    if (tolerance && (sw_length_parse(tolerance, strlen(tolerance), &t, NULL) != SW_OK || t.pm < 0)) {
        snprintf(why, WHY_SIZE, "the tolerance %s is not a length", tolerance);
        return false;
    }
    low = e.pm < INT64_MIN + t.pm ? INT64_MIN : e.pm - t.pm;
    high = e.pm > INT64_MAX - t.pm ? INT64_MAX : e.pm + t.pm;
    snprintf(why, WHY_SIZE, "expected %s, got %lld pm", expected, (long long)got.pm);
    return got.pm >= low && got.pm <= high;
}

/* Reads `1.5` or `1.5 deg`; the unit must be this one. */
static bool read_number(const char *text, const char *unit, double *number)
{
    char *end;
    *number = strtod(text, &end);
    if (end == text) return false;
    if (*end == ' ') end++;
    return strcmp(end, unit) == 0;
}

static bool same_number(const char *expected, const char *tolerance, double got, const char *unit, char *why)
{
    double e, t = 0, noise;
    if (!read_number(expected, unit, &e)) {
        snprintf(why, WHY_SIZE, "%s is not a number in [%s]", expected, unit);
        return false;
    }
    if (tolerance && !read_number(tolerance, unit, &t)) {
        snprintf(why, WHY_SIZE, "the tolerance %s is not a number in [%s]", tolerance, unit);
        return false;
    }
    /* A printed decimal and its tolerance are themselves rounded to the nearest double. */
    noise = 4 * DBL_EPSILON * fmax(fabs(e), fabs(got));
    snprintf(why, WHY_SIZE, "expected %s, got %.17g", expected, got);
    return fabs(e - got) <= t + noise;
}

/* The unit that each quantity is held in. Temperatures are not among them: `5 K` is one and a difference too. */
static const struct {
    int32_t quantity;
    const char *unit;
} HELD[] = {
    {SW_QUANTITY_AREA, "m2"},          {SW_QUANTITY_VOLUME, "m3"},           {SW_QUANTITY_MASS, "kg"},          {SW_QUANTITY_FORCE, "N"},
    {SW_QUANTITY_PRESSURE, "Pa"},      {SW_QUANTITY_LINE_LOAD, "N/m"},       {SW_QUANTITY_SURFACE_MASS, "kg/m2"}, {SW_QUANTITY_LINE_MASS, "kg/m"},
    {SW_QUANTITY_DENSITY, "kg/m3"},    {SW_QUANTITY_EXPANSION, "/K"},
};

static bool same_held(const char *expected, const char *tolerance, const char *got, char *why)
{
    size_t i;
    for (i = 0; i < sizeof HELD / sizeof *HELD; i++) {
        const char *unit = HELD[i].unit;
        double e, g, t = 0;
        if (sw_convert(HELD[i].quantity, expected, strlen(expected), unit, strlen(unit), &e, NULL) != SW_OK) continue;
        if (sw_convert(HELD[i].quantity, got, strlen(got), unit, strlen(unit), &g, NULL) != SW_OK) continue;
        if (tolerance && sw_convert(HELD[i].quantity, tolerance, strlen(tolerance), unit, strlen(unit), &t, NULL) != SW_OK) continue;
        snprintf(why, WHY_SIZE, "expected %s, got %s", expected, got);
        return fabs(e - g) <= t + 4 * DBL_EPSILON * fmax(fabs(e), fabs(g));
    }
    snprintf(why, WHY_SIZE, "expected %s, got %s: not the same, or in units that do not compare", expected, got);
    return strcmp(expected, got) == 0;
}

/* Text that may be a length, a number with or without a unit, another quantity, or a word. */
static bool same_written(const char *expected, const char *tolerance, const char *got, char *why)
{
    sw_length length, e;
    double number, ignored;
    char *unit;
    if (sw_length_parse(got, strlen(got), &length, NULL) == SW_OK && sw_length_parse(expected, strlen(expected), &e, NULL) == SW_OK)
        return same_length(expected, tolerance, length, why);
    number = strtod(got, &unit);
    if (unit > got) {
        if (*unit == ' ') unit++;
        if (read_number(expected, unit, &ignored) && (!tolerance || read_number(tolerance, unit, &ignored)))
            return same_number(expected, tolerance, number, unit, why);
    }
    return same_held(expected, tolerance, got, why);
}

static bool same_output(const test_case *c, const field *expected, char *why)
{
    const char *tolerance = value_of(c, '~', expected->key);
    size_t i;
    for (i = 0; i < c->output_count; i++) {
        const output *o = &c->outputs[i];
        if (strcmp(o->key, expected->key) != 0) continue;
        if (o->form == A_LENGTH) return same_length(expected->value, tolerance, o->length, why);
        if (o->form == WRITTEN) return same_written(expected->value, tolerance, o->text, why);
        if (o->form == A_NUMBER) return same_number(expected->value, tolerance, o->number, o->unit, why);
        snprintf(why, WHY_SIZE, "expected %s, got %s", expected->value, o->text);
        return strcmp(expected->value, o->text) == 0;
    }
    snprintf(why, WHY_SIZE, "no such output");
    return false;
}

/* Whether the refusal is at the path that the case expects, if it expects one. A path in C begins with the argument, which is no part of the case. */
static bool refused_there(const test_case *c)
{
    static const char ARGUMENT[] = "input.";
    const char *expected = value_of(c, '>', "refused_at");
    char path[TEXT_SIZE] = "";
    if (!expected) return true;
    if (!c->error || sw_error_path(c->error, path, sizeof path, NULL) != SW_OK) return false;
    return strcmp(strncmp(path, ARGUMENT, sizeof ARGUMENT - 1) == 0 ? path + sizeof ARGUMENT - 1 : path, expected) == 0;
}

/* Whether a case that ran gave what it expects; prints what it did not, unless that is what it expects. */
static bool matches(const test_case *c, sw_status status)
{
    const char *refused = value_of(c, '>', "refused");
    char why[WHY_SIZE];
    bool all = true;
    size_t i, expected = 0;
    if (status != SW_OK || refused) {
        if (status != SW_OK && refused && number_of(KINDS, refused) == status && refused_there(c)) return true;
        why[0] = '\0';
        if (c->error) sw_error_text(c->error, why, sizeof why, NULL);
        if (!c->deviates) printf("%s (%s): status %d, expected %s; %s\n", c->name, c->op, (int)status, refused ? refused : "outputs", why);
        return false;
    }
    for (i = 0; i < c->count; i++) {
        if (c->fields[i].kind != '>') continue;
        expected++;
        if (same_output(c, &c->fields[i], why)) continue;
        if (!c->deviates) printf("%s (%s): %s: %s\n", c->name, c->op, c->fields[i].key, why);
        all = false;
    }
    if (expected == 0) printf("%s (%s): expects nothing\n", c->name, c->op);
    return all && expected > 0;
}

/* Reading. */

static int hex(char digit)
{
    const char *digits = "0123456789ABCDEF", *at = digit ? strchr(digits, digit) : NULL;
    return at ? (int)(at - digits) : -1;
}

/* Undoes the escapes in place. */
static bool unescape(char *text)
{
    char *to = text;
    for (; *text; text++) {
        if (*text == '%') {
            int high = hex(text[1]), low = high < 0 ? -1 : hex(text[2]);
            if (low < 0) return false;
            *to++ = (char)(high * 16 + low);
            text += 2;
        } else {
            *to++ = *text;
        }
    }
    *to = '\0';
    return true;
}

/* Cuts the text at the next `mark`; NULL if there is none. */
static char *cut(char *text, char mark)
{
    char *at = strchr(text, mark);
    if (!at) return NULL;
    *at = '\0';
    return at + 1;
}

static bool read_case(char *line, test_case *c)
{
    char *part = line, *next = cut(line, '|');
    memset(c, 0, sizeof *c);
    if (!next) return false;
    c->op = part;
    part = next;
    next = cut(part, '|');
    c->name = part;
    if (!unescape(line) || !unescape(part)) return false;
    while ((part = next) != NULL) {
        field *f = &c->fields[c->count];
        char *value;
        next = cut(part, '|');
        if (*part == '!') {
            c->deviates = true;
            continue;
        }
        if (c->count == MOST_FIELDS) return false;
        f->kind = *part == '>' || *part == '~' ? *part++ : ' ';
        value = cut(part, '=');
        if (!value || !unescape(part) || !unescape(value)) return false;
        f->key = part;
        f->value = value;
        c->count++;
    }
    return true;
}

/* The whole file, ended by a NUL, to be freed; NULL if it cannot be read. */
static char *read_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    size_t size = 0, capacity = 1 << 16, got;
    char *text = file ? malloc(capacity) : NULL;
    while (text && (got = fread(text + size, 1, capacity - size - 1, file)) > 0) {
        size += got;
        if (capacity - size < 2) {
            char *more = realloc(text, capacity *= 2);
            if (!more) free(text);
            text = more;
        }
    }
    if (text) text[size] = '\0';
    if (file) fclose(file);
    return text;
}

int main(int argc, char **argv)
{
    static test_case c; /* large, so not on the stack */
    int passed = 0, failed = 0, deviating = 0;
    char *text, *line, *next;
    if (argc != 2 || !(text = read_file(argv[1]))) {
        fprintf(stderr, "usage: run_cases FILE, a file that can be read\n");
        return 2;
    }
    for (line = text; line && *line; line = next) {
        size_t op = 0;
        bool match;
        next = cut(line, '\n');
        if (!read_case(line, &c)) {
            printf("not a case: %s\n", line);
            failed++;
            continue;
        }
        while (op < sizeof OPS / sizeof *OPS && strcmp(OPS[op].op, c.op) != 0) op++;
        match = matches(&c, op == sizeof OPS / sizeof *OPS ? calculation(&c) : OPS[op].run(&c));
        if (c.broken) {
            printf("%s (%s): the input %s is missing or wrong\n", c.name, c.op, c.broken);
            match = c.deviates;
        } else if (c.deviates) {
            printf("deviates: %s%s\n", c.name, match ? ", as declared, but it matches" : "");
            deviating++;
        }
        if (match != c.deviates) passed++;
        else failed++;
        sw_error_free(c.error);
    }
    free(text);
    printf("%d passed, %d failed, %d deviating\n", passed, failed, deviating);
    return failed > 0;
}
