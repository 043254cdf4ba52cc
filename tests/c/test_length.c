#include "check.h"
#include <math.h>
#include <stdlib.h>

static const int64_t INCH = INT64_C(25400000000);

static void parses_and_formats(void)
{
    sw_length l = {0};
    char text[64];
    size_t needed = 0;
    CHECK(sw_length_parse(TEXT("12'-3 5/8\""), &l, NULL) == SW_OK);
    CHECK(l.pm == INT64_C(3749675000000));
    CHECK(sw_length_format(l, TEXT("ft-in/16"), text, sizeof text, &needed, NULL) == SW_OK);
    CHECK(strcmp(text, "12'-3 5/8\"") == 0);
    CHECK(needed == strlen(text) + 1);
    CHECK(sw_length_format(l, TEXT("mm"), text, sizeof text, NULL, NULL) == SW_OK);
    CHECK(strcmp(text, "3749.675 mm") == 0);
    /* The length of the text counts, not a NUL: only the first four bytes are read. */
    CHECK(sw_length_parse("5 mm and more", 4, &l, NULL) == SW_OK);
    CHECK(l.pm == INT64_C(5000000000));
}

static void a_bare_number_needs_its_unit(void)
{
    sw_length l = {77};
    CHECK(sw_length_parse(TEXT("39"), &l, NULL) == SW_UNIT);
    CHECK(l.pm == 77);
    CHECK(sw_length_parse_in(TEXT("39"), SW_LENGTH_UNIT_INCH, &l, NULL) == SW_OK);
    CHECK(l.pm == 39 * INCH);
    CHECK(sw_length_parse_in(TEXT("39"), 0, &l, NULL) == SW_UNIT);
    CHECK(sw_length_parse_in(TEXT("39"), 99, &l, NULL) == SW_UNIT);
    CHECK(sw_length_parse_in(TEXT("39"), INT32_MIN, &l, NULL) == SW_UNIT);
    CHECK(sw_length_parse_exact(TEXT("1/512\""), &l, NULL) == SW_OK);
    CHECK(l.pm == INCH / 512);
    CHECK(sw_length_parse_exact(TEXT("1/7\""), &l, NULL) == SW_OUT_OF_RANGE);
    CHECK(l.pm == INCH / 512);
}

static void every_unit_converts_both_ways(void)
{
    static const struct { sw_length_unit unit; int64_t pm; } units[] = {
        {SW_LENGTH_UNIT_INCH, INT64_C(25400000000)},       {SW_LENGTH_UNIT_FOOT, INT64_C(304800000000)},
        {SW_LENGTH_UNIT_MILLIMETRE, INT64_C(1000000000)},  {SW_LENGTH_UNIT_CENTIMETRE, INT64_C(10000000000)},
        {SW_LENGTH_UNIT_METRE, INT64_C(1000000000000)},    {SW_LENGTH_UNIT_MICROMETRE, INT64_C(1000000)},
    };
    size_t i;
    for (i = 0; i < sizeof units / sizeof *units; i++) {
        sw_length l = {0};
        double value = 0;
        CHECK(sw_length_from_f64(2.5, units[i].unit, &l, NULL) == SW_OK);
        CHECK(l.pm == units[i].pm / 2 * 5);
        CHECK(sw_length_get(l, units[i].unit, &value, NULL) == SW_OK);
        CHECK(value == 2.5);
    }
}

static void numbers_that_are_none_are_refused(void)
{
    sw_length l = {77};
    double value = 77;
    CHECK(sw_length_from_f64(NAN, SW_LENGTH_UNIT_METRE, &l, NULL) == SW_NOT_FINITE);
    CHECK(sw_length_from_f64(INFINITY, SW_LENGTH_UNIT_METRE, &l, NULL) == SW_NOT_FINITE);
    CHECK(sw_length_from_f64(1e300, SW_LENGTH_UNIT_METRE, &l, NULL) == SW_OVERFLOW);
    CHECK(sw_length_from_f64(1, 7, &l, NULL) == SW_UNIT);
    CHECK(l.pm == 77);
    CHECK(sw_length_get(l, 0, &value, NULL) == SW_UNIT);
    CHECK(value == 77);
}

static void totals_are_exact_and_checked(void)
{
    sw_length parts[1000], total = {77};
    size_t i;
    for (i = 0; i < 1000; i++) parts[i].pm = INCH / 512;
    CHECK(sw_length_sum(parts, 1000, &total, NULL) == SW_OK);
    CHECK(total.pm == 1000 * (INCH / 512));
    CHECK(sw_length_sum(NULL, 0, &total, NULL) == SW_OK);
    CHECK(total.pm == 0);
    total.pm = 77;
    parts[0].pm = INT64_MAX;
    CHECK(sw_length_sum(parts, 2, &total, NULL) == SW_OVERFLOW);
    CHECK(sw_length_sum(NULL, 1, &total, NULL) == SW_MISSING);
    CHECK(sw_length_sum(parts, SIZE_MAX, &total, NULL) == SW_TOO_LARGE);
    CHECK(sw_length_sum(parts, SIZE_MAX / sizeof *parts, &total, NULL) == SW_TOO_LARGE);
    CHECK(total.pm == 77);
    /* What overflows on the way may come back: only the end is checked. */
    parts[1].pm = 5;
    parts[2].pm = INT64_MIN;
    CHECK(sw_length_sum(parts, 3, &total, NULL) == SW_OK);
    CHECK(total.pm == 4);
}

static void stations_do_not_add_up_errors(void)
{
    sw_length whole, s = {77};
    whole.pm = 10 * INCH;
    CHECK(sw_length_station(whole, 3, 3, &s, NULL) == SW_OK);
    CHECK(s.pm == whole.pm);
    CHECK(sw_length_station(whole, 1, 3, &s, NULL) == SW_OK);
    CHECK(s.pm == INT64_C(84666666667));
    CHECK(sw_length_station(whole, 1, 0, &s, NULL) == SW_OUT_OF_RANGE);
    whole.pm = INT64_MAX;
    CHECK(sw_length_station(whole, UINT32_MAX, 1, &s, NULL) == SW_OVERFLOW);
    CHECK(s.pm == INT64_C(84666666667));
}

static void rounds_as_the_shop_does(void)
{
    static const struct { sw_rounding direction; int up, down; } directions[] = {
        /* 5/8 and -5/8 of a step, in steps. */
        {SW_ROUNDING_CEIL, 1, 0},    {SW_ROUNDING_FLOOR, 0, -1},    {SW_ROUNDING_AWAY, 1, -1},
        {SW_ROUNDING_TOWARD, 0, 0},  {SW_ROUNDING_HALF_EVEN, 1, -1}, {SW_ROUNDING_HALF_AWAY, 1, -1},
    };
    sw_length inch = {0}, l = {0}, r = {0};
    size_t i;
    inch.pm = INCH;
    for (i = 0; i < sizeof directions / sizeof *directions; i++) {
        l.pm = INCH / 8 * 5;
        CHECK(sw_length_round(l, inch, directions[i].direction, &r, NULL) == SW_OK);
        CHECK(r.pm == directions[i].up * INCH);
        l.pm = -l.pm;
        CHECK(sw_length_round(l, inch, directions[i].direction, &r, NULL) == SW_OK);
        CHECK(r.pm == directions[i].down * INCH);
    }
    l.pm = 120 * INCH + 500000; /* half a micrometre over */
    CHECK(sw_length_round(l, inch, SW_ROUNDING_CEIL, &r, NULL) == SW_OK);
    CHECK(r.pm == 120 * INCH);
    {
        sw_length none = {0};
        CHECK(sw_length_round_tolerating(l, inch, SW_ROUNDING_CEIL, none, &r, NULL) == SW_OK);
        CHECK(r.pm == 121 * INCH);
        CHECK(sw_length_round_tolerating(l, inch, SW_ROUNDING_CEIL, inch, &r, NULL) == SW_OUT_OF_RANGE);
        CHECK(sw_length_round(l, none, SW_ROUNDING_CEIL, &r, NULL) == SW_OUT_OF_RANGE);
    }
    CHECK(sw_length_round(l, inch, 0, &r, NULL) == SW_UNKNOWN);
    CHECK(r.pm == 121 * INCH);
}

static void null_is_refused_everywhere(void)
{
    sw_length l = {0};
    CHECK(sw_length_parse(NULL, 0, &l, NULL) == SW_MISSING);
    CHECK(sw_length_parse(NULL, 5, &l, NULL) == SW_MISSING);
    CHECK(sw_length_parse(TEXT("1 mm"), NULL, NULL) == SW_MISSING);
    CHECK(sw_length_parse_in(TEXT("1"), SW_LENGTH_UNIT_INCH, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_parse_exact(TEXT("1 mm"), NULL, NULL) == SW_MISSING);
    CHECK(sw_length_format(l, NULL, 2, NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_from_f64(1, SW_LENGTH_UNIT_INCH, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_get(l, SW_LENGTH_UNIT_INCH, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_sum(&l, 1, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_station(l, 1, 1, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_round(l, l, SW_ROUNDING_CEIL, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_round_tolerating(l, l, SW_ROUNDING_CEIL, l, NULL, NULL) == SW_MISSING);
}

static void bad_text_is_refused(void)
{
    static const char *const bad[] = {"", " ", "12-3", "3,5 mm", "1'000 mm", "1/0\"", "mm", "1e5", "5\" 3'", "nan mm", "inf mm"};
    sw_length l = {77};
    size_t i;
    for (i = 0; i < sizeof bad / sizeof *bad; i++) CHECK(sw_length_parse(TEXT(bad[i]), &l, NULL) != SW_OK);
    CHECK(sw_length_parse("\xff\xfe", 2, &l, NULL) == SW_PARSE);
    CHECK(sw_length_parse("5 \xe2\x80", 4, &l, NULL) == SW_PARSE);
    CHECK(sw_length_parse("5 mm\0", 5, &l, NULL) == SW_PARSE);
    CHECK(sw_length_parse(TEXT("99999999999999999999 m"), &l, NULL) != SW_OK);
    CHECK(sw_length_parse("5 mm", SIZE_MAX, &l, NULL) == SW_TOO_LARGE);
    CHECK(sw_length_parse("5 mm", (size_t)PTRDIFF_MAX + 1, &l, NULL) == SW_TOO_LARGE);
    CHECK(sw_length_format(l, TEXT("furlong"), NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(l.pm == 77);
}

static void a_long_text_is_refused_in_good_time(void)
{
    const size_t size = 20u << 20;
    char *digits = malloc(size);
    sw_length l = {77};
    CHECK(digits != NULL);
    if (!digits) return;
    memset(digits, '1', size);
    CHECK(sw_length_parse(digits, size, &l, NULL) != SW_OK);
    memset(digits, ' ', size);
    CHECK(sw_length_parse(digits, size, &l, NULL) == SW_PARSE);
    memset(digits, '\xc3', size);
    CHECK(sw_length_parse(digits, size, &l, NULL) == SW_PARSE);
    CHECK(l.pm == 77);
    free(digits);
}

static void small_buffers_hold_the_beginning(void)
{
    sw_length l;
    char text[16];
    size_t capacity, needed = 0;
    l.pm = 92075000000;
    CHECK(sw_length_format(l, TEXT("mm"), NULL, 0, &needed, NULL) == SW_OK);
    CHECK(needed == sizeof "92.075 mm");
    for (capacity = 1; capacity <= needed; capacity++) {
        size_t said = 0;
        sw_error *e = NULL;
        memset(text, '#', sizeof text);
        CHECK(sw_length_format(l, TEXT("mm"), text, capacity, &said, &e) == (capacity < needed ? SW_BUFFER_TOO_SMALL : SW_OK));
        CHECK(e == NULL);
        CHECK(said == needed);
        CHECK(strlen(text) == capacity - 1);
        CHECK(strncmp(text, "92.075 mm", capacity - 1) == 0);
        CHECK(text[capacity] == '#');
    }
    memset(text, '#', sizeof text);
    CHECK(sw_length_format(l, TEXT("mm"), text, 0, &needed, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(text[0] == '#');
    CHECK(sw_length_format(l, TEXT("mm"), NULL, 8, &needed, NULL) == SW_MISSING);
    CHECK(sw_length_format(l, TEXT("mm"), NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_length_format(l, TEXT("mm"), text, SIZE_MAX, NULL, NULL) == SW_TOO_LARGE);
    /* A refusal writes neither text nor size. */
    needed = 77;
    CHECK(sw_length_format(l, TEXT("in/3"), text, sizeof text, &needed, NULL) == SW_OUT_OF_RANGE);
    CHECK(needed == 77);
    CHECK(text[0] == '#');
}

int main(void)
{
    RUN(parses_and_formats);
    RUN(a_bare_number_needs_its_unit);
    RUN(every_unit_converts_both_ways);
    RUN(numbers_that_are_none_are_refused);
    RUN(totals_are_exact_and_checked);
    RUN(stations_do_not_add_up_errors);
    RUN(rounds_as_the_shop_does);
    RUN(null_is_refused_everywhere);
    RUN(bad_text_is_refused);
    RUN(a_long_text_is_refused_in_good_time);
    RUN(small_buffers_hold_the_beginning);
    return closing_line();
}
