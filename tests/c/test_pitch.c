#include "check.h"
#include <math.h>

static sw_pitch pitch(const char *text)
{
    sw_pitch p = {0, {0}, {0}, {0}};
    CHECK(sw_pitch_parse(TEXT(text), &p, NULL) == SW_OK);
    return p;
}

static void a_framing_square_row_holds(void)
{
    /* 9 in 12: sides 3, 4 and 5. */
    sw_pitch p = pitch("9:12");
    sw_angle a = {0};
    double factor = 0, ratio = 0;
    sw_length run = {INT64_C(304800000000)}, rise = {0}, along = {0};
    CHECK(sw_pitch_slope_factor(p, &factor, NULL) == SW_OK);
    CHECK(factor == 1.25);
    CHECK(sw_pitch_ratio(p, &ratio, NULL) == SW_OK);
    CHECK(ratio == 0.75);
    CHECK(sw_pitch_angle(p, &a, NULL) == SW_OK);
    CHECK(fabs(a.degrees - 36.869898) < 5e-7);
    CHECK(sw_pitch_rise_over(p, run, &rise, NULL) == SW_OK);
    CHECK(rise.pm == run.pm / 4 * 3);
    CHECK(sw_pitch_slope_length(p, run, &along, NULL) == SW_OK);
    CHECK(along.pm == run.pm / 4 * 5);
}

static void it_is_kept_as_given(void)
{
    static const char *const texts[] = {"6 1/2:12", "1/4:12", "33.3 %", "26.5 deg", "150 mm:310 mm"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof *texts; i++) {
        char text[64] = "";
        CHECK(sw_pitch_text(pitch(texts[i]), text, sizeof text, NULL, NULL) == SW_OK);
        CHECK(strcmp(text, texts[i]) == 0);
    }
    CHECK(pitch("26.5 deg").form == SW_PITCH_ANGLE);
    CHECK(pitch("26.5 deg").angle.degrees == 26.5);
    CHECK(pitch("6:12").form == SW_PITCH_RATIO);
    CHECK(pitch("6:12").run.pm == INT64_C(304800000000));
}

static void the_three_makers_agree(void)
{
    sw_length rise = {INT64_C(1200000000000)}, run = {INT64_C(3000000000000)};
    sw_angle slope = {45};
    sw_pitch p = pitch("1:1");
    int32_t order = 7;
    CHECK(sw_pitch_rise_run(rise, run, &p, NULL) == SW_OK);
    CHECK(sw_pitch_compare(p, pitch("40 %"), &order, NULL) == SW_OK);
    CHECK(order == 0);
    CHECK(sw_pitch_compare(p, pitch("41 %"), &order, NULL) == SW_OK);
    CHECK(order == -1);
    CHECK(sw_pitch_from_angle(slope, &p, NULL) == SW_OK);
    CHECK(sw_pitch_compare(p, pitch("11.9:12"), &order, NULL) == SW_OK);
    CHECK(order == 1);
}

static void a_limit_is_compared_exactly(void)
{
    bool passes = false;
    CHECK(sw_pitch_at_least(pitch("1:48"), pitch("1/4:12"), &passes, NULL) == SW_OK);
    CHECK(passes);
    CHECK(sw_pitch_at_least(pitch("2.083333333 %"), pitch("1/4:12"), &passes, NULL) == SW_OK);
    CHECK(!passes);
}

static void near(double expected, double got, double tolerance)
{
    CHECK(fabs(expected - got) <= tolerance);
}

static void equal_pitches_meet_at_a_square_corner(void)
{
    /* Planes at 45 degrees: the planes' normals are 60 degrees apart, and the hip rises 1 in sqrt 2. */
    sw_angle square = {90};
    sw_corner c;
    CHECK(sw_pitch_corner(pitch("12:12"), pitch("12:12"), square, &c, NULL) == SW_OK);
    near(120, c.dihedral.degrees, 1e-10);
    near(45, c.first.plan.degrees, 1e-10);
    near(45, c.second.plan.degrees, 1e-10);
    near(1 / sqrt(2), tan(c.slope.degrees * acos(-1.0) / 180), 1e-12);
    near(30, c.first.backing.degrees, 1e-10);
    near(sqrt(3), c.first.length_factor, 1e-12);
    near(sqrt(3), c.second.length_factor, 1e-12);
    near(90, c.first.in_plane.degrees + c.first.meeting.degrees, 1e-10);
}

static void the_sides_of_a_corner_change_places_with_its_pitches(void)
{
    sw_angle plan = {110};
    sw_corner c, d;
    CHECK(sw_pitch_corner(pitch("4:12"), pitch("9:12"), plan, &c, NULL) == SW_OK);
    CHECK(sw_pitch_corner(pitch("9:12"), pitch("4:12"), plan, &d, NULL) == SW_OK);
    near(110, c.first.plan.degrees + c.second.plan.degrees, 1e-10);
    near(180, c.dihedral.degrees + c.first.backing.degrees + c.second.backing.degrees, 1e-10);
    near(c.first.plan.degrees, d.second.plan.degrees, 1e-10);
    near(c.first.meeting.degrees, d.second.meeting.degrees, 1e-10);
    near(c.second.length_factor, d.first.length_factor, 1e-12);
    near(c.slope.degrees, d.slope.degrees, 1e-10);
}

static void what_is_no_corner_is_refused(void)
{
    static const double bad[] = {0, -90, 180, 360};
    sw_pitch flat = pitch("0:12"), p = pitch("6:12");
    sw_angle plan = {90};
    sw_corner c;
    sw_error *e = NULL;
    char path[64];
    size_t i;
    memset(&c, 0x55, sizeof c);
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        plan.degrees = bad[i];
        CHECK(sw_pitch_corner(p, p, plan, &c, NULL) == SW_OUT_OF_RANGE);
    }
    plan.degrees = NAN;
    CHECK(sw_pitch_corner(p, p, plan, &c, NULL) == SW_NOT_FINITE);
    plan.degrees = 90;
    CHECK(sw_pitch_corner(p, p, plan, NULL, NULL) == SW_MISSING);
    /* Both faults of a corner are reported. */
    plan.degrees = 200;
    CHECK(sw_pitch_corner(p, flat, plan, &c, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "second") == 0);
    CHECK(sw_error_other_count(e) == 1);
    CHECK(sw_error_kind(sw_error_other_at(e, 0)) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(sw_error_other_at(e, 0), path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "plan") == 0);
    sw_error_free(e);
    for (i = 0; i < sizeof c; i++) CHECK(((unsigned char *)&c)[i] == 0x55);
}

static void what_is_no_pitch_is_refused(void)
{
    static const char *const bad[] = {"", "6", "6:0", "-6:12", "6:12:1", "90 deg", "nan deg", "6,5:12", "150 mm:12"};
    const sw_pitch before = {77, {77}, {77}, {77}};
    sw_pitch p = before;
    sw_length none = {0}, some = {1};
    sw_angle angle = {0};
    size_t i;
    for (i = 0; i < sizeof bad / sizeof *bad; i++) CHECK(sw_pitch_parse(TEXT(bad[i]), &p, NULL) != SW_OK);
    CHECK(sw_pitch_parse("\xff", 1, &p, NULL) == SW_PARSE);
    CHECK(sw_pitch_parse("6:12", SIZE_MAX, &p, NULL) == SW_TOO_LARGE);
    CHECK(sw_pitch_parse(NULL, 0, &p, NULL) == SW_MISSING);
    CHECK(sw_pitch_parse(TEXT("6:12"), NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_rise_run(some, none, &p, NULL) == SW_OUT_OF_RANGE);
    angle.degrees = 90;
    CHECK(sw_pitch_from_angle(angle, &p, NULL) == SW_OUT_OF_RANGE);
    angle.degrees = NAN;
    CHECK(sw_pitch_from_angle(angle, &p, NULL) == SW_NOT_FINITE);
    CHECK(memcmp(&p, &before, sizeof p) == 0);
}

static void a_struct_made_by_hand_is_checked(void)
{
    sw_pitch p = {0, {0}, {0}, {0}};
    sw_error *e = NULL;
    double factor = 77;
    char text[64];
    CHECK(sw_pitch_slope_factor(p, &factor, &e) == SW_UNKNOWN);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "pitch.form") == 0);
    sw_error_free(e);
    p = pitch("6:12");
    p.angle.degrees = 26;
    CHECK(sw_pitch_slope_factor(p, &factor, &e) == SW_CONFLICT);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "pitch.angle") == 0);
    sw_error_free(e);
    p = pitch("26 deg");
    p.run.pm = 1;
    CHECK(sw_pitch_slope_factor(p, &factor, NULL) == SW_CONFLICT);
    p = pitch("26 deg");
    p.angle.degrees = INFINITY;
    CHECK(sw_pitch_slope_factor(p, &factor, NULL) == SW_NOT_FINITE);
    p = pitch("6:12");
    p.run.pm = -1;
    CHECK(sw_pitch_slope_factor(p, &factor, NULL) == SW_OUT_OF_RANGE);
    CHECK(factor == 77);
}

static void a_framing_row_needs_a_spacing(void)
{
    /* 12:12: root 2 and root 3 feet, and jacks at one foot differ by root 2. */
    sw_length foot = {INT64_C(304800000000)}, none = {0};
    sw_pitch unmade = {0, {0}, {0}, {0}};
    sw_framing_row row;
    double percent = 77;
    CHECK(sw_pitch_framing(pitch("12:12"), foot, &row, NULL) == SW_OK);
    near(sqrt(2) * 304.8, (double)row.common_per_foot.pm / 1e9, 1e-8);
    near(sqrt(3) * 304.8, (double)row.hip_per_foot.pm / 1e9, 1e-8);
    near(sqrt(2) * 304.8, (double)row.jack_difference.pm / 1e9, 1e-8);
    memset(&row, 0x55, sizeof row);
    CHECK(sw_pitch_framing(pitch("12:12"), none, &row, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_pitch_framing(unmade, foot, &row, NULL) == SW_UNKNOWN);
    CHECK(((unsigned char *)&row)[0] == 0x55);
    CHECK(sw_pitch_percent(unmade, &percent, NULL) == SW_UNKNOWN);
    CHECK(percent == 77);
    CHECK(sw_pitch_percent(pitch("3:12"), &percent, NULL) == SW_OK);
    CHECK(percent == 25);
}

static void null_outputs_are_refused(void)
{
    sw_pitch p = pitch("6:12");
    sw_length l = {1};
    sw_angle a = {1};
    CHECK(sw_pitch_rise_run(l, l, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_from_angle(a, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_text(p, NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_angle(p, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_ratio(p, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_percent(p, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_framing(p, l, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_slope_factor(p, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_rise_over(p, l, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_slope_length(p, l, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_compare(p, p, NULL, NULL) == SW_MISSING);
    CHECK(sw_pitch_at_least(p, p, NULL, NULL) == SW_MISSING);
}

int main(void)
{
    RUN(a_framing_square_row_holds);
    RUN(it_is_kept_as_given);
    RUN(the_three_makers_agree);
    RUN(a_limit_is_compared_exactly);
    RUN(equal_pitches_meet_at_a_square_corner);
    RUN(the_sides_of_a_corner_change_places_with_its_pitches);
    RUN(what_is_no_corner_is_refused);
    RUN(what_is_no_pitch_is_refused);
    RUN(a_struct_made_by_hand_is_checked);
    RUN(a_framing_row_needs_a_spacing);
    RUN(null_outputs_are_refused);
    return closing_line();
}
