#include "check.h"
#include <math.h>

/* Two legs of 50 mm to the outer corner of a square bend. */
#define PROFILE                                                                                     \
    "{\"thickness\": \"0.6 mm\", \"legs\": ["                                                         \
    "{\"name\": \"a\", \"length\": \"50 mm\", \"start\": \"sheet-edge\", \"end\": \"outer-corner\"},"      \
    "{\"name\": \"b\", \"length\": \"50 mm\", \"start\": \"outer-corner\", \"end\": \"sheet-edge\"}],"       \
    "\"bends\": [{\"angle\": \"90 deg\", \"direction\": \"down\", \"inside_radius\": \"1 mm\"}], \"painted\": \"upper\"}"
#define PATTERN(rule) "{\"profile\": " PROFILE ", \"rule\": " rule "}"

enum { COUNT = 1000 };
static const char neutral[] = PATTERN("{\"neutral-axis\": {\"factor\": 0.4}}");

static void fill(double *thickness, double *radius)
{
    int i;
    for (i = 0; i < COUNT; i++) {
        thickness[i] = 0.4 + 0.0007 * i;
        radius[i] = (3 - 0.002 * i) / 25.4;
    }
}

static sw_status call(const char *pattern, const double *thickness, const double *radius, size_t count, double *girths, sw_error **error)
{
    return sw_trim_girths(pattern, strlen(pattern), thickness, SW_LENGTH_UNIT_MILLIMETRE, radius, SW_LENGTH_UNIT_INCH, count, SW_LENGTH_UNIT_METRE, girths, error);
}

/* 100 mm less two setbacks of R + T, plus the bend: pi/2 (R + 0.4 T) by geometry, under DIN 6935 pi/2 (R + k T/2). */
static void every_element_is_the_formula(void)
{
    const double quarter = acos(0);
    double thickness[COUNT], radius[COUNT], girths[COUNT];
    int i, bad = 0;
    fill(thickness, radius);
    CHECK(call(neutral, thickness, radius, COUNT, girths, NULL) == SW_OK);
    for (i = 0; i < COUNT; i++) {
        double r = radius[i] * 25.4, t = thickness[i];
        bad += !(fabs(girths[i] * 1000 - (100 - 2 * (r + t) + quarter * (r + 0.4 * t))) < 1e-10);
    }
    CHECK(bad == 0);
    CHECK(call(PATTERN("\"din-6935\""), thickness, radius, COUNT, girths, NULL) == SW_OK);
    for (i = 0; i < COUNT; i++) {
        double r = radius[i] * 25.4, t = thickness[i], k = r / t > 5 ? 1 : 0.65 + 0.5 * log10(r / t);
        bad += !(fabs(girths[i] * 1000 - (100 - 2 * (r + t) + quarter * (r + k * t / 2))) < 1e-10);
    }
    CHECK(bad == 0);
}

static void the_result_may_replace_an_input(void)
{
    double thickness[COUNT], radius[COUNT], girths[COUNT];
    fill(thickness, radius);
    CHECK(call(neutral, thickness, radius, COUNT, girths, NULL) == SW_OK);
    CHECK(call(neutral, thickness, radius, COUNT, radius, NULL) == SW_OK);
    CHECK(memcmp(girths, radius, sizeof girths) == 0);
}

static void a_refusal_names_its_element_and_writes_nothing(void)
{
    double thickness[COUNT], radius[COUNT], girths[COUNT];
    sw_error *e = NULL;
    char path[64] = "";
    fill(thickness, radius);
    girths[0] = girths[COUNT - 1] = -1;
    thickness[777] = -0.6;
    CHECK(call(neutral, thickness, radius, COUNT, girths, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "elements[777].thickness") == 0);
    sw_error_free(e);
    CHECK(girths[0] == -1 && girths[COUNT - 1] == -1);
    thickness[777] = NAN;
    CHECK(call(neutral, thickness, radius, COUNT, girths, NULL) == SW_NOT_FINITE);
    CHECK(call(neutral, thickness, radius, 700, girths, NULL) == SW_OK);
}

static void what_is_no_array_is_refused(void)
{
    double one = 1, out = -1;
    size_t length = strlen(neutral);
    sw_error *e = NULL;
    char path[64] = "";
    CHECK(call(neutral, NULL, NULL, 0, NULL, NULL) == SW_OK);
    CHECK(call(neutral, NULL, &one, 1, &out, NULL) == SW_MISSING);
    CHECK(call(neutral, &one, NULL, 1, &out, NULL) == SW_MISSING);
    CHECK(call(neutral, &one, &one, 1, NULL, NULL) == SW_MISSING);
    CHECK(call(neutral, &one, &one, SIZE_MAX, &out, NULL) == SW_TOO_LARGE);
    CHECK(call("{}", &one, &one, 1, &out, NULL) == SW_MISSING);
    CHECK(sw_trim_girths(NULL, 0, &one, 1, &one, 1, 1, 1, &out, NULL) == SW_MISSING);
    CHECK(sw_trim_girths(neutral, length, &one, 0, &one, 1, 1, 1, &out, NULL) == SW_UNIT);
    CHECK(sw_trim_girths(neutral, length, &one, 1, &one, 1, 1, 0, &out, &e) == SW_UNIT);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "girth_unit") == 0);
    sw_error_free(e);
    CHECK(out == -1);
}

int main(void)
{
    RUN(every_element_is_the_formula);
    RUN(the_result_may_replace_an_input);
    RUN(a_refusal_names_its_element_and_writes_nothing);
    RUN(what_is_no_array_is_refused);
    return closing_line();
}
