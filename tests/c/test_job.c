#include "check.h"
#include "json_step.h"
#include <stdlib.h>

#define SPACING(run, maximum) "{\"run\": " run ", \"end_distance\": \"0 in\", \"rule\": {\"equal\": {\"maximum\": " maximum "}}}"
#define PLY(thickness) "{\"thickness\": \"" thickness "\", \"ultimate\": \"33 ksi\"}"
#define SCREW(thickness)                                                                             \
    "{\"edition\": \"y2012\", \"head_ply\": " PLY(thickness) ", \"far_ply\": " PLY("0.0188 in")          \
    ", \"screw\": {\"diameter\": \"0.19 in\", \"head\": \"0.34 in\"}}"

static void a_result_comes_by_name(void)
{
    char out[1024] = "", text[64] = "";
    CHECK(sw_compute_json(TEXT("spacing.spacing"), TEXT(SPACING("\"4 ft\"", "\"2 ft\"")), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(json_at(out, "positions[2]", text, sizeof text) && strcmp(text, "1219.2 mm") == 0);
    CHECK(json_at(out, "positions.count", text, sizeof text) && strcmp(text, "3") == 0);
    CHECK(!json_at(out, "positions[3]", text, sizeof text) && !json_at(out, "stations", text, sizeof text));
    CHECK(sw_compute_json(TEXT("sealant.joint-depth"), TEXT("{\"rule\":\"half-width\",\"width\":\"3/4 in\"}"), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(strcmp(out, "\"9.525 mm\"") == 0);
}

static void the_working_comes_with_it(void)
{
    char out[4096] = "", text[64] = "";
    const char *sheet;
    size_t second = 1;
    CHECK(sw_explain_json(TEXT("spacing.spacing"), TEXT(SPACING("\"4 ft\"", "\"2 ft\"")), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(json_at(out, "out.positions[1]", text, sizeof text) && strcmp(text, "609.6 mm") == 0);
    sheet = json_field(out, "worksheet", 9);
    CHECK(sheet != NULL && json_at(sheet, "title", text, sizeof text) && strcmp(text, "stations along a run") == 0);
    CHECK(json_at(json_step(sheet, &second), "result", text, sizeof text) && strcmp(text, "2") == 0);
}

static void names_are_listed_and_an_unknown_one_is_refused(void)
{
    size_t needed = 0;
    char *names, out[8] = "?";
    sw_error *error = NULL;
    CHECK(sw_calculation_names(NULL, 0, &needed, NULL) == SW_OK);
    CHECK((names = malloc(needed)) != NULL);
    CHECK(sw_calculation_names(names, needed, NULL, NULL) == SW_OK);
    CHECK(strstr(names, "closure.closure-bay\n") != NULL && strlen(names) + 1 == needed);
    free(names);
    CHECK(sw_compute_json(TEXT("spacing.spaces"), TEXT("{}"), out, sizeof out, NULL, &error) == SW_UNKNOWN);
    CHECK(strcmp(out, "?") == 0);
    CHECK(sw_error_path(error, out, sizeof out, NULL) == SW_OK && strcmp(out, "name") == 0);
    sw_error_free(error);
}

#define CORNER(x, y) "{\"x\": \"" x "\", \"y\": \"" y "\"}"
#define RING "[" CORNER("0 ft", "0 ft") ", " CORNER("20 ft", "0 ft") ", " CORNER("20 ft", "12 ft") ", " CORNER("0 ft", "12 ft") "]"
#define SHED(pitch)                                                                                              \
    "{\"planes\": [{\"name\": \"shed\", \"shape\": {\"plan\": {\"outer\": " RING ", \"pitch\": \"" pitch "\", \"down_slope\": \"270 deg\", " \
    "\"anchor\": {\"x\": \"0 ft\", \"y\": \"0 ft\", \"z\": \"8 ft\"}}}}]}"
#define DRAWN(roof) "{\"name\": \"boathouse\", \"figure\": \"180 mm\", \"paper\": \"inch\", \"lengths\": \"ft-in/16\", \"roof\": " roof "}"

static void drawings_come_by_name(void)
{
    static const char page[] = "{\"job\": \"boathouse\", \"paper\": \"a4\", \"lengths\": \"mm.0\", \"sketch\": {\"planes\": [{\"name\": \"shed\", \"outer\": " RING "}]}}";
    char out[32768] = "", text[64] = "";
    sw_error *error = NULL;
    CHECK(sw_drawing_names(out, sizeof out, NULL, NULL) == SW_OK && strcmp(out, "roof.measuring-page\nroof.roof-plan\ntrim.drawn-blank\ntrim.drawn-trim") == 0);
    CHECK(sw_drawing_json(TEXT("roof.roof-plan"), TEXT(DRAWN(SHED("3:12"))), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(strstr(out, "<svg ") != NULL && strstr(out, ">shed, 3:12<") != NULL && strstr(out, ">eave 1, 20&#39;-0&quot;<") != NULL);
    CHECK(sw_drawing_json(TEXT("roof.measuring-page"), TEXT(page), out, sizeof out, NULL, NULL) == SW_OK && strstr(out, "1. shed") != NULL);
    CHECK(sw_drawing_json(TEXT("roof.roof-plan"), TEXT(DRAWN(SHED("steep"))), out, sizeof out, NULL, &error) == SW_PARSE);
    CHECK(sw_error_path(error, text, sizeof text, NULL) == SW_OK && strcmp(text, "input.roof.planes[0].shape.plan.pitch") == 0);
    sw_error_free(error);
    CHECK(sw_drawing_json(TEXT("roof.plan"), TEXT("{}"), out, sizeof out, NULL, &error) == SW_UNKNOWN);
    CHECK(sw_error_path(error, text, sizeof text, NULL) == SW_OK && strcmp(text, "name") == 0);
    sw_error_free(error);
}

static void the_result_follows_the_rules_of_text(void)
{
    const char *input = "{\"rule\":\"half-width\",\"width\":\"3/4 in\"}";
    char out[6] = "?";
    size_t needed = 0;
    CHECK(sw_compute_json(TEXT("sealant.joint-depth"), TEXT(input), NULL, 0, &needed, NULL) == SW_OK && needed == sizeof "\"9.525 mm\"");
    CHECK(sw_compute_json(TEXT("sealant.joint-depth"), TEXT(input), out, sizeof out, &needed, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(strcmp(out, "\"9.52") == 0 && needed == sizeof "\"9.525 mm\"");
    CHECK(sw_compute_json(TEXT("sealant.joint-depth"), TEXT(input), NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_compute_json(NULL, 0, TEXT(input), out, sizeof out, NULL, NULL) == SW_MISSING);
    CHECK(sw_explain_json(TEXT("sealant.joint-depth"), NULL, 0, out, sizeof out, NULL, NULL) == SW_MISSING);
}

static void each_bad_input_has_its_kind_and_its_path(void)
{
    static const struct {
        const char *name, *input;
        sw_status status;
        const char *path;
    } bad[] = {
        {"spacing.spacing", "", SW_FORMAT, "input"},
        {"spacing.spacing", "not JSON", SW_FORMAT, "input"},
        {"spacing.spacing", "{", SW_FORMAT, "input"},
        {"spacing.spacing", "{}", SW_MISSING, "input.run"},
        {"spacing.spacing", "{\"length\": \"4 ft\"}", SW_UNKNOWN, "input.length"},
        {"spacing.spacing", SPACING("\"4 ft\"", "\"2 ft\", \"least\": \"1 ft\""), SW_UNKNOWN, "input.rule.equal.least"},
        {"spacing.spacing", SPACING("\"4 ft\", \"run\": \"4 ft\"", "\"2 ft\""), SW_CONFLICT, "input.run"},
        {"spacing.spacing", SPACING("\"4 ft\"", "\"0 ft\""), SW_OUT_OF_RANGE, "input.rule.maximum"},
        {"spacing.spacing", SPACING("\"0 ft\"", "\"2 ft\""), SW_OUT_OF_RANGE, "input.run"},
        {"spacing.spacing", SPACING("\"NaN ft\"", "\"2 ft\""), SW_PARSE, "input.run"},
        {"spacing.spacing", SPACING("\"inf ft\"", "\"2 ft\""), SW_PARSE, "input.run"},
        {"spacing.spacing", SPACING("NaN", "\"2 ft\""), SW_FORMAT, "input.run"},
        {"spacing.spacing", SPACING("4", "\"2 ft\""), SW_FORMAT, "input.run"},
        {"fastener.screw-connection", SCREW("0 in"), SW_OUT_OF_RANGE, "input.head_ply.thickness"},
        {"fastener.screw-connection", SCREW("-1 mm"), SW_OUT_OF_RANGE, "input.head_ply.thickness"},
    };
    char out[64], path[64], message[512];
    size_t i;
    CHECK(sw_compute_json(TEXT("fastener.screw-connection"), TEXT(SCREW("0.0188 in")), out, sizeof out, NULL, NULL) == SW_BUFFER_TOO_SMALL);
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        sw_error *error = NULL;
        strcpy(out, "?");
        CHECK(sw_compute_json(TEXT(bad[i].name), TEXT(bad[i].input), out, sizeof out, NULL, &error) == bad[i].status);
        CHECK(strcmp(out, "?") == 0);
        path[0] = message[0] = '\0';
        CHECK(error != NULL && sw_error_path(error, path, sizeof path, NULL) == SW_OK);
        CHECK(strcmp(path, bad[i].path) == 0);
        CHECK(sw_error_message(error, message, sizeof message, NULL) == SW_OK && message[0]);
        if (sw_test_faults) printf("  at input %lu: %s: %s\n", (unsigned long)i, path, message);
        sw_error_free(error);
        CHECK(sw_explain_json(TEXT(bad[i].name), TEXT(bad[i].input), out, sizeof out, NULL, NULL) == bad[i].status);
    }
}

/* Many times the same text. */
static char *repeated(const char *text, size_t times)
{
    size_t len = strlen(text), i;
    char *all = malloc(len * times + 1);
    if (!all) exit(2);
    for (i = 0; i < times; i++) memcpy(all + i * len, text, len);
    all[len * times] = '\0';
    return all;
}

static void garbage_and_deep_nesting_are_ordinary_refusals(void)
{
    char *garbage = repeated("[\"", (size_t)50 << 20), *arrays = repeated("[", 100000), *objects = repeated("{\"rule\":", 100000);
    char out[8] = "?", value[64] = "", bytes[3] = {'"', (char)0xff, '"'};
    sw_error *error = NULL;
    CHECK(sw_compute_json(TEXT("stock.cutting"), TEXT(garbage), out, sizeof out, NULL, &error) == SW_TOO_LARGE);
    CHECK(sw_error_value(error, value, sizeof value, NULL) == SW_OK && strcmp(value, "104857600 bytes") == 0);
    sw_error_free(error);
    CHECK(sw_compute_json(TEXT("stock.cutting"), TEXT(arrays), out, sizeof out, NULL, NULL) == SW_FORMAT);
    CHECK(sw_compute_json(TEXT("spacing.spacing"), TEXT(objects), out, sizeof out, NULL, NULL) == SW_UNKNOWN);
    CHECK(sw_explain_json(TEXT("roof.roof-input"), TEXT(arrays), out, sizeof out, NULL, NULL) == SW_FORMAT);
    CHECK(sw_compute_json(TEXT("spacing.spacing"), bytes, sizeof bytes, out, sizeof out, NULL, NULL) == SW_PARSE);
    CHECK(strcmp(out, "?") == 0);
    free(garbage);
    free(arrays);
    free(objects);
}

int main(void)
{
    RUN(a_result_comes_by_name);
    RUN(the_working_comes_with_it);
    RUN(drawings_come_by_name);
    RUN(names_are_listed_and_an_unknown_one_is_refused);
    RUN(the_result_follows_the_rules_of_text);
    RUN(each_bad_input_has_its_kind_and_its_path);
    RUN(garbage_and_deep_nesting_are_ordinary_refusals);
    return closing_line();
}
