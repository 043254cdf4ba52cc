#include "check.h"

static sw_error *refusal(const char *text)
{
    sw_length l = {0};
    sw_error *e = NULL;
    CHECK(sw_length_parse(TEXT(text), &l, &e) != SW_OK);
    CHECK(e != NULL);
    return e;
}

static void an_error_tells_all_it_knows(void)
{
    sw_error *e = refusal("12-3");
    char text[256];
    size_t start = 0, end = 0, needed = 0;
    CHECK(sw_error_kind(e) == SW_PARSE);
    CHECK(sw_error_message(e, text, sizeof text, &needed) == SW_OK);
    CHECK(strlen(text) > 0 && needed == strlen(text) + 1);
    CHECK(sw_error_value(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "12-3") == 0);
    CHECK(sw_error_allowed(e, text, sizeof text, &needed) == SW_OK);
    CHECK(needed > 1);
    CHECK(sw_error_span(e, &start, &end) == SW_OK);
    CHECK(start == 2 && end == 3);
    CHECK(sw_error_text(e, text, sizeof text, NULL) == SW_OK || strlen(text) == sizeof text - 1);
    CHECK(strstr(text, "12-3") != NULL);
    CHECK(sw_error_other_count(e) == 0);
    CHECK(sw_error_other_at(e, 0) == NULL);
    sw_error_free(e);
}

static void what_an_error_lacks_needs_no_bytes(void)
{
    sw_length none = {0};
    sw_error *e = NULL;
    char text[8] = "#######";
    size_t needed = 77, start = 77, end = 77;
    CHECK(sw_length_sum(NULL, 1, &none, &e) == SW_MISSING);
    CHECK(sw_error_value(e, text, sizeof text, &needed) == SW_OK);
    CHECK(needed == 0 && text[0] == '\0');
    CHECK(sw_error_cure(e, NULL, 0, &needed) == SW_OK);
    CHECK(needed == 0);
    CHECK(sw_error_span(e, &start, &end) == SW_MISSING);
    CHECK(start == 77 && end == 77);
    sw_error_free(e);
}

static void an_error_names_the_argument(void)
{
    sw_length l = {0};
    sw_error *e = NULL;
    char text[64];
    CHECK(sw_length_parse_in(TEXT("1"), 42, &l, &e) == SW_UNIT);
    CHECK(sw_error_path(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "unit") == 0);
    CHECK(sw_error_value(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strcmp(text, "42") == 0);
    sw_error_free(e);
}

static void success_clears_the_callers_pointer(void)
{
    sw_length l = {0};
    int never_an_error = 0;
    sw_error *e = (sw_error *)(void *)&never_an_error;
    CHECK(sw_length_parse(TEXT("1 mm"), &l, &e) == SW_OK);
    CHECK(e == NULL);
}

static void null_errors_are_harmless(void)
{
    char text[8] = "#";
    size_t n = 77;
    sw_error_free(NULL);
    CHECK(sw_error_kind(NULL) == SW_OK);
    CHECK(sw_error_other_count(NULL) == 0);
    CHECK(sw_error_other_at(NULL, 0) == NULL);
    CHECK(sw_error_message(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_text(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_path(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_value(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_allowed(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_cure(NULL, text, sizeof text, &n) == SW_MISSING);
    CHECK(sw_error_span(NULL, &n, &n) == SW_MISSING);
    CHECK(n == 77 && text[0] == '#');
}

static void readers_refuse_null_outputs(void)
{
    sw_error *e = refusal("x");
    size_t n = 77;
    CHECK(sw_error_message(e, NULL, 0, NULL) == SW_MISSING);
    CHECK(sw_error_message(e, NULL, 8, &n) == SW_MISSING);
    CHECK(sw_error_span(e, NULL, &n) == SW_MISSING);
    CHECK(sw_error_span(e, &n, NULL) == SW_MISSING);
    CHECK(n == 77);
    sw_error_free(e);
}

static void text_is_cut_between_characters(void)
{
    /* The value is "3" and a vulgar fraction of two bytes, then rubbish. */
    sw_error *e = refusal("3\xc2\xbd x");
    char text[8];
    size_t needed = 0;
    memset(text, '#', sizeof text);
    CHECK(sw_error_value(e, text, 3, &needed) == SW_BUFFER_TOO_SMALL);
    CHECK(needed == 6);
    CHECK(strcmp(text, "3") == 0);
    CHECK(text[2] == '#');
    CHECK(sw_error_value(e, text, 4, &needed) == SW_BUFFER_TOO_SMALL);
    CHECK(strcmp(text, "3\xc2\xbd") == 0);
    sw_error_free(e);
}

static void invalid_utf8_is_pointed_at(void)
{
    sw_length l = {0};
    sw_error *e = NULL;
    size_t start = 0, end = 0;
    char text[64];
    CHECK(sw_length_parse("12\xff mm", 6, &l, &e) == SW_PARSE);
    CHECK(sw_error_span(e, &start, &end) == SW_OK);
    CHECK(start == 2);
    CHECK(sw_error_message(e, text, sizeof text, NULL) == SW_OK);
    CHECK(strstr(text, "UTF-8") != NULL);
    sw_error_free(e);
}

int main(void)
{
    RUN(an_error_tells_all_it_knows);
    RUN(what_an_error_lacks_needs_no_bytes);
    RUN(an_error_names_the_argument);
    RUN(success_clears_the_callers_pointer);
    RUN(null_errors_are_harmless);
    RUN(readers_refuse_null_outputs);
    RUN(text_is_cut_between_characters);
    RUN(invalid_utf8_is_pointed_at);
    return closing_line();
}
