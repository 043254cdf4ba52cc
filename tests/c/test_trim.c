#include "check.h"
#include <math.h>
#include <stdlib.h>

#define MM(n) {INT64_C(1000000000) * (n)}

static void path_is(sw_error *e, const char *expected)
{
    char path[128] = "";
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    if (strcmp(path, expected) != 0) printf("the path is %s\n", path);
    CHECK(strcmp(path, expected) == 0);
    sw_error_free(e);
}

static void allowance_and_deduction_make_both_setbacks(void)
{
    /* BA + BD = 2 (R + T) tan(A/2), here 2 (1 + 2) mm. */
    static const char *const rules[] = {"\"aviation\"", "\"din-6935\"", "{\"handbook\":\"soft-steel\"}", "{\"neutral-axis\":{\"factor\":0.4}}",
                                        "\"din-6935-linear\"", "{\"din-6935-or\":{\"otherwise\":\"aviation\"}}"};
    const sw_bend_size size = {MM(2), MM(1), {90}};
    size_t i;
    for (i = 0; i < sizeof rules / sizeof *rules; i++) {
        sw_length allowance = {0}, deduction = {0};
        CHECK(sw_trim_allowance(TEXT(rules[i]), size, &allowance, NULL) == SW_OK);
        CHECK(sw_trim_deduction(TEXT(rules[i]), size, &deduction, NULL) == SW_OK);
        CHECK(llabs(allowance.pm + deduction.pm - INT64_C(6000000000)) <= 1);
    }
}

static void what_is_no_rule_is_refused(void)
{
    static const struct {
        const char *rule;
        sw_status status;
        const char *path;
    } bad[] = {
        {"", SW_FORMAT, "rule"},
        {"aviation", SW_FORMAT, "rule"},
        {"\"guess\"", SW_UNKNOWN, "rule"},
        {"\"aviation\" 1", SW_FORMAT, "rule"},
        {"{\"neutral-axis\":{}}", SW_MISSING, "rule.neutral-axis.factor"},
        {"{\"neutral-axis\":{\"factor\":2}}", SW_OUT_OF_RANGE, "rule.neutral-axis.factor"},
        {"{\"neutral-axis\":{\"factor\":0.4,\"k\":1}}", SW_UNKNOWN, "rule.neutral-axis.k"},
        {"{\"handbook\":\"tin\"}", SW_UNKNOWN, "rule.handbook"},
        {"{\"din-6935-or\":{}}", SW_MISSING, "rule.din-6935-or.otherwise"},
        {"{\"din-6935-or\":{\"otherwise\":\"din-6935\"}}", SW_CONFLICT, "rule.din-6935-or.otherwise"},
    };
    const sw_bend_size size = {MM(2), MM(1), {90}};
    sw_length l = {77};
    sw_error *e;
    size_t i;
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        CHECK(sw_trim_allowance(TEXT(bad[i].rule), size, &l, &e) == bad[i].status);
        path_is(e, bad[i].path);
        CHECK(sw_trim_deduction(TEXT(bad[i].rule), size, &l, NULL) == bad[i].status);
    }
    CHECK(sw_trim_allowance(NULL, 0, size, &l, NULL) == SW_MISSING);
    CHECK(sw_trim_allowance("\"\xff\"", 3, size, &l, NULL) == SW_PARSE);
    CHECK(sw_trim_allowance(TEXT("\"aviation\""), size, NULL, NULL) == SW_MISSING);
    CHECK(sw_trim_deduction(TEXT("\"aviation\""), size, NULL, NULL) == SW_MISSING);
    CHECK(l.pm == 77);
}

static void a_hem_goes_by_the_rule_chosen_for_it(void)
{
    /* DIN 6935 refuses a hem, the other rule takes it: 0.0078 T a degree. */
    const sw_bend_size hem = {MM(1), MM(0), {180}};
    sw_length l = {77};
    sw_error *e;
    CHECK(sw_trim_allowance(TEXT("\"din-6935\""), hem, &l, &e) == SW_OUT_OF_RANGE);
    path_is(e, "size.angle");
    CHECK(sw_trim_allowance(TEXT("{\"din-6935-or\":{\"otherwise\":\"aviation\"}}"), hem, &l, NULL) == SW_OK);
    CHECK(l.pm == INT64_C(1404000000));
    CHECK(sw_trim_allowance(TEXT("\"din-6935-linear\""), hem, &l, &e) == SW_OUT_OF_RANGE);
    path_is(e, "size.angle");
}

static void what_is_no_bend_is_refused(void)
{
    const sw_bend_size none = {MM(0), MM(-1), {0}}, hem = {MM(1), MM(1), {180}}, wild = {MM(1), MM(1), {NAN}};
    const sw_angle beyond = {361}, folded = {180};
    sw_length l = {77};
    double factor = 77;
    sw_error *e;
    CHECK(sw_trim_allowance(TEXT("\"aviation\""), none, &l, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_other_count(e) == 2);
    path_is(e, "size.thickness");
    CHECK(sw_trim_deduction(TEXT("\"aviation\""), hem, &l, &e) == SW_OUT_OF_RANGE);
    path_is(e, "size.angle");
    CHECK(sw_trim_allowance(TEXT("\"aviation\""), wild, &l, NULL) == SW_NOT_FINITE);
    CHECK(sw_trim_din_compensation(none, &l, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_trim_din_compensation(hem, &l, &e) == SW_OUT_OF_RANGE);
    path_is(e, "size.angle");
    CHECK(sw_trim_din_compensation(wild, &l, NULL) == SW_NOT_FINITE);
    CHECK(sw_trim_din_compensation(hem, NULL, NULL) == SW_MISSING);
    CHECK(sw_trim_setback_factor(folded, &factor, &e) == SW_OUT_OF_RANGE);
    path_is(e, "angle");
    CHECK(sw_trim_setback_factor(beyond, &factor, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_trim_setback_factor(wild.angle, &factor, NULL) == SW_NOT_FINITE);
    CHECK(sw_trim_setback_factor(folded, NULL, NULL) == SW_MISSING);
    CHECK(l.pm == 77);
    CHECK(factor == 77);
}

int main(void)
{
    RUN(allowance_and_deduction_make_both_setbacks);
    RUN(what_is_no_rule_is_refused);
    RUN(a_hem_goes_by_the_rule_chosen_for_it);
    RUN(what_is_no_bend_is_refused);
    return closing_line();
}
