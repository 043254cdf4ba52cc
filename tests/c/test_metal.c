#include "check.h"
#include <math.h>

static void a_gauge_needs_its_system(void)
{
    static const char *const bad[] = {"", "24", "24 ga", "16 oz", "24 ga tin", "99 ga galvanized", "24 oz galvanized", "-3 ga zinc-gauge"};
    sw_length thickness = {77};
    double weight = 77;
    sw_error *e = NULL;
    char path[64];
    size_t i;
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        CHECK(sw_metal_gauge_thickness(TEXT(bad[i]), &thickness, NULL) != SW_OK);
        CHECK(sw_metal_gauge_weight(TEXT(bad[i]), TEXT("lb/ft2"), &weight, NULL) != SW_OK);
    }
    CHECK(sw_metal_gauge_thickness(TEXT("24 ga"), &thickness, &e) == SW_UNIT);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "gauge") == 0);
    sw_error_free(e);
    CHECK(sw_metal_gauge_thickness(NULL, 0, &thickness, NULL) == SW_MISSING);
    CHECK(sw_metal_gauge_thickness("\xff", 1, &thickness, NULL) == SW_PARSE);
    CHECK(sw_metal_gauge_thickness(TEXT("24 ga galvanized"), NULL, NULL) == SW_MISSING);
    CHECK(thickness.pm == 77);
    CHECK(weight == 77);
}

static void a_weight_has_its_unit(void)
{
    double weight = 77;
    /* 15 U.S.C. 206: gauge 16 is 2.5 lb/ft2. */
    CHECK(sw_metal_gauge_weight(TEXT("16 ga us-standard"), TEXT("lb/ft2"), &weight, NULL) == SW_OK);
    CHECK(fabs(weight - 2.5) < 1e-12);
    weight = 77;
    CHECK(sw_metal_gauge_weight(TEXT("16 ga us-standard"), TEXT("lb"), &weight, NULL) == SW_UNIT);
    CHECK(sw_metal_gauge_weight(TEXT("16 ga us-standard"), NULL, 0, &weight, NULL) == SW_MISSING);
    CHECK(sw_metal_gauge_weight(TEXT("16 ga us-standard"), TEXT("lb/ft2"), NULL, NULL) == SW_MISSING);
    CHECK(sw_metal_gauge_weight(TEXT("16 ga brown-and-sharpe"), TEXT("lb/ft2"), &weight, NULL) == SW_MISSING);
    CHECK(weight == 77);
}

static void the_nearest_gauge_is_of_a_known_system(void)
{
    sw_length none = {0}, thickness = {INT64_C(548640000)}; /* 0.0216 in, copper of 16 oz */
    int32_t number = 77;
    CHECK(sw_metal_nearest_gauge(TEXT("copper"), thickness, &number, NULL) == SW_OK);
    CHECK(number == 16);
    number = 77;
    CHECK(sw_metal_nearest_gauge(TEXT("tin"), thickness, &number, NULL) == SW_UNKNOWN);
    CHECK(sw_metal_nearest_gauge(NULL, 0, thickness, &number, NULL) == SW_MISSING);
    CHECK(sw_metal_nearest_gauge(TEXT("copper"), none, &number, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_metal_nearest_gauge(TEXT("copper"), thickness, NULL, NULL) == SW_MISSING);
    CHECK(number == 77);
}

static void what_cannot_move_is_refused(void)
{
    sw_length metre = {INT64_C(1000000000000)}, change = {77}, negative = {-1}, most = {INT64_MAX};
    CHECK(sw_movement_length_change(TEXT("20e-6 /K"), metre, TEXT("-50 K"), &change, NULL) == SW_OK);
    CHECK(change.pm == -1000000000);
    change.pm = 77;
    CHECK(sw_movement_length_change(TEXT("20e-6"), metre, TEXT("50 K"), &change, NULL) == SW_UNIT);
    CHECK(sw_movement_length_change(TEXT("20e-6 /K"), metre, TEXT("50"), &change, NULL) == SW_UNIT);
    CHECK(sw_movement_length_change(TEXT("-20e-6 /K"), metre, TEXT("50 K"), &change, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_movement_length_change(TEXT("20e-6 /K"), negative, TEXT("50 K"), &change, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_movement_length_change(TEXT("1 /K"), most, TEXT("50 K"), &change, NULL) == SW_OVERFLOW);
    CHECK(sw_movement_length_change(NULL, 0, metre, TEXT("50 K"), &change, NULL) == SW_MISSING);
    CHECK(sw_movement_length_change(TEXT("20e-6 /K"), metre, NULL, 0, &change, NULL) == SW_MISSING);
    CHECK(sw_movement_length_change(TEXT("20e-6 /K"), metre, TEXT("50 K"), NULL, NULL) == SW_MISSING);
    CHECK(change.pm == 77);
}

int main(void)
{
    RUN(a_gauge_needs_its_system);
    RUN(a_weight_has_its_unit);
    RUN(the_nearest_gauge_is_of_a_known_system);
    RUN(what_cannot_move_is_refused);
    return closing_line();
}
