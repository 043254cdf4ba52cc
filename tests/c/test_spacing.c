#include "check.h"

static const int64_t INCH = INT64_C(25400000000);

static sw_length inches(int n)
{
    sw_length l = {0};
    l.pm = n * INCH;
    return l;
}

static void stations_stand_at_equal_spaces(void)
{
    sw_length s[16];
    size_t needed = 0, i;
    memset(s, 0x55, sizeof s);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), NULL, 0, &needed, NULL) == SW_OK);
    CHECK(needed == 9);
    needed = 0;
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), s, 9, &needed, NULL) == SW_OK);
    CHECK(needed == 9);
    for (i = 0; i < 9; i++) CHECK(s[i].pm == (2 + 12 * (int64_t)i) * INCH);
    CHECK(((unsigned char *)s)[9 * sizeof *s] == 0x55);
}

static void a_small_array_holds_the_beginning(void)
{
    sw_length s[4] = {{77}, {77}, {77}, {77}};
    sw_error *e = (sw_error *)s;
    size_t needed = 0;
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), s, 3, &needed, &e) == SW_BUFFER_TOO_SMALL);
    CHECK(e == NULL);
    CHECK(needed == 9);
    CHECK(s[0].pm == 2 * INCH && s[2].pm == 26 * INCH && s[3].pm == 77);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), s, 0, NULL, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(s[0].pm == 2 * INCH);
}

static void what_has_no_stations_is_refused(void)
{
    const sw_length tiny = {1}, negative = {-1};
    sw_length s[2] = {{77}, {77}};
    size_t needed = 77;
    sw_error *e = NULL;
    char path[32] = "";
    CHECK(sw_spacing_equal(inches(0), inches(2), inches(12), s, 2, &needed, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_spacing_equal(inches(100), negative, inches(12), s, 2, &needed, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(0), s, 2, &needed, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "rule.maximum") == 0);
    sw_error_free(e);
    CHECK(sw_spacing_equal(negative, negative, negative, s, 2, &needed, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_other_count(e) == 2);
    sw_error_free(e);
    CHECK(sw_spacing_equal(inches(3), inches(2), inches(12), s, 2, &needed, NULL) == SW_IMPOSSIBLE);
    CHECK(sw_spacing_equal(inches(100), inches(2), tiny, s, 2, &needed, NULL) == SW_TOO_LARGE);
    CHECK(needed == 77);
    CHECK(s[0].pm == 77);
}

static void pointers_are_checked(void)
{
    sw_length s[2] = {{77}, {77}};
    size_t needed = 77;
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), NULL, 2, &needed, NULL) == SW_MISSING);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), s, SIZE_MAX, &needed, NULL) == SW_TOO_LARGE);
    CHECK(sw_spacing_equal(inches(100), inches(2), inches(12), (sw_length *)((char *)s + 1), 1, &needed, NULL) == SW_OUT_OF_RANGE);
    CHECK(needed == 77);
}

int main(void)
{
    RUN(stations_stand_at_equal_spaces);
    RUN(a_small_array_holds_the_beginning);
    RUN(what_has_no_stations_is_refused);
    RUN(pointers_are_checked);
    return closing_line();
}
