#include "check.h"
#include <math.h>

/* Exact anchors, as NIST SP 811 (2008), Appendix B.8 prints the factors. */
static const struct {
    sw_quantity quantity;
    const char *text, *unit;
    double value, tolerance;
} conversions[] = {
    {SW_QUANTITY_LENGTH, "1 ft", "mm", 304.8, 0},
    {SW_QUANTITY_ANGLE, "180 deg", "rad", 3.14159265358979, 1e-14},
    {SW_QUANTITY_AREA, "1 square", "m2", 9.290304, 1e-12},
    {SW_QUANTITY_VOLUME, "1 gal", "in3", 231, 1e-9},
    {SW_QUANTITY_MASS, "1 lb", "g", 453.59237, 1e-9},
    {SW_QUANTITY_FORCE, "1 lbf", "N", 4.448222, 5e-7},
    {SW_QUANTITY_PRESSURE, "1 psf", "Pa", 47.88026, 5e-6},
    {SW_QUANTITY_LINE_LOAD, "1 lbf/ft", "N/m", 14.59390, 5e-6},
    {SW_QUANTITY_SURFACE_MASS, "1 oz/ft2", "g/m2", 305.1517, 5e-5},
    {SW_QUANTITY_LINE_MASS, "1 lb/ft", "kg/m", 1.488164, 5e-7},
    {SW_QUANTITY_DENSITY, "1 lb/in3", "kg/m3", 27679.90, 5e-3},
    {SW_QUANTITY_EXPANSION, "1e-6 /degF", "/K", 1.8e-6, 1e-18},
    {SW_QUANTITY_TEMPERATURE, "212 degF", "degC", 100, 1e-12},
    {SW_QUANTITY_TEMPERATURE, "0 degC", "K", 273.15, 0},
    {SW_QUANTITY_TEMPERATURE_DIFFERENCE, "180 degF", "K", 100, 1e-12},
};

static void printed_factors_hold(void)
{
    size_t i;
    for (i = 0; i < sizeof conversions / sizeof *conversions; i++) {
        double value = NAN;
        CHECK(sw_convert(conversions[i].quantity, TEXT(conversions[i].text), TEXT(conversions[i].unit), &value, NULL) == SW_OK);
        CHECK(fabs(value - conversions[i].value) <= conversions[i].tolerance);
    }
}

static void a_unit_of_another_quantity_is_refused(void)
{
    sw_quantity q;
    double value = 77;
    for (q = SW_QUANTITY_LENGTH; q <= SW_QUANTITY_TEMPERATURE_DIFFERENCE; q++) {
        const char *text = conversions[q - 1].text, *unit = conversions[q - 1].unit;
        if (q == SW_QUANTITY_TEMPERATURE_DIFFERENCE) {
            text = "1 K";
            unit = "K";
        }
        CHECK(sw_convert(q, TEXT(text), TEXT("cubit"), &value, NULL) == SW_UNIT);
        CHECK(sw_convert(q, TEXT("1 cubit"), TEXT(unit), &value, NULL) != SW_OK);
        CHECK(sw_convert(q, TEXT("1"), TEXT(unit), &value, NULL) == SW_UNIT);
        CHECK(sw_convert(q, TEXT(""), TEXT(unit), &value, NULL) == SW_PARSE);
    }
    CHECK(value == 77);
}

static void a_refusal_names_the_argument_and_the_units(void)
{
    sw_error *e = NULL;
    double value = 77;
    char text[64];
    CHECK(sw_convert(SW_QUANTITY_FORCE, TEXT("1 N"), TEXT("kgf"), &value, &e) == SW_UNIT);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "unit") == 0);
    CHECK(sw_error_allowed(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "N, kN, lbf, kip") == 0);
    sw_error_free(e);
    CHECK(sw_convert(SW_QUANTITY_FORCE, TEXT("1 kgf"), TEXT("N"), &value, &e) == SW_UNIT);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "text") == 0);
    sw_error_free(e);
    CHECK(sw_convert(0, TEXT("1 N"), TEXT("N"), &value, &e) == SW_UNKNOWN);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "quantity") == 0);
    sw_error_free(e);
    CHECK(value == 77);
}

static void bad_input_is_refused(void)
{
    double value = 77;
    CHECK(sw_convert(SW_QUANTITY_MASS, TEXT("1e999 kg"), TEXT("g"), &value, NULL) == SW_NOT_FINITE);
    CHECK(sw_convert(SW_QUANTITY_TEMPERATURE, TEXT("-300 degC"), TEXT("K"), &value, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_convert(SW_QUANTITY_MASS, NULL, 0, TEXT("g"), &value, NULL) == SW_MISSING);
    CHECK(sw_convert(SW_QUANTITY_MASS, TEXT("1 kg"), NULL, 0, &value, NULL) == SW_MISSING);
    CHECK(sw_convert(SW_QUANTITY_MASS, TEXT("1 kg"), TEXT("g"), NULL, NULL) == SW_MISSING);
    CHECK(sw_convert(SW_QUANTITY_MASS, "\xff", 1, TEXT("g"), &value, NULL) == SW_PARSE);
    CHECK(sw_convert(SW_QUANTITY_MASS, TEXT("1 kg"), "\xff", 1, &value, NULL) == SW_PARSE);
    CHECK(sw_convert(SW_QUANTITY_MASS, "1 kg", SIZE_MAX, TEXT("g"), &value, NULL) == SW_TOO_LARGE);
    CHECK(value == 77);
}

int main(void)
{
    RUN(printed_factors_hold);
    RUN(a_unit_of_another_quantity_is_refused);
    RUN(a_refusal_names_the_argument_and_the_units);
    RUN(bad_input_is_refused);
    return closing_line();
}
