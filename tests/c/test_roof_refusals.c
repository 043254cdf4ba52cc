/* Roofs at fault, by the calculation's name: every fault in one refusal, each with its vertex, its planes and its distance. */
#include "check.h"
#include "json_at.h"
#include <stdlib.h>

#define P(x, y) "{\"x\": \"" #x " ft\", \"y\": \"" #y " ft\"}"
#define V(x, y, z) "{\"x\": \"" #x " ft\", \"y\": \"" #y " ft\", \"z\": \"" #z " ft\"}"
/* A plane in plan that falls this way, through a point. */
#define PLAN(name, ring, pitch, down, at)                                                                                              \
    "{\"name\": \"" name "\", \"shape\": {\"plan\": {\"outer\": [" ring "], \"pitch\": \"" pitch "\", \"down_slope\": \"" down " deg\", " \
    "\"anchor\": " at "}}}"
#define SPACE(name, ring) "{\"name\": \"" name "\", \"shape\": {\"space\": {\"outer\": [" ring "]}}}"

static char text[512];

static const char *told(const sw_error *error, sw_status (*what)(const sw_error *, char *, size_t, size_t *))
{
    text[0] = '\0';
    return what(error, text, sizeof text, NULL) == SW_OK ? text : "?";
}

/* The error, or one of those beside it, at this path; NULL where none is. */
static const sw_error *fault_at(const sw_error *error, const char *path)
{
    size_t i;
    if (strcmp(told(error, sw_error_path), path) == 0) return error;
    for (i = 0; i < sw_error_other_count(error); i++)
        if (strcmp(told(sw_error_other_at(error, i), sw_error_path), path) == 0) return sw_error_other_at(error, i);
    return NULL;
}

static sw_error *refused(const char *roof, sw_status status)
{
    char out[8] = "?";
    sw_error *error = NULL;
    CHECK(sw_compute_json(TEXT("roof.roof-input"), TEXT(roof), out, sizeof out, NULL, &error) == status);
    CHECK(error != NULL && strcmp(out, "?") == 0);
    if (!error) exit(2);
    return error;
}

/* A gable whose ridge is open by an inch, 25.4 mm by definition, and a third plane that stands 0.1 ft off, 30.48 mm. */
#define SOUTH PLAN("south", P(0, 0) ", " P(40, 0) ", " P(40, 10) ", " P(0, 10), "6:12", "270", V(0, 0, 9))
#define NORTH                                                                                                                         \
    "{\"name\": \"north\", \"shape\": {\"plan\": {\"outer\": [{\"x\": \"0 ft\", \"y\": \"121 in\"}, {\"x\": \"40 ft\", \"y\": \"121 in\"}, "         \
    P(40, 20) ", " P(0, 20) "], \"pitch\": \"6:12\", \"down_slope\": \"90 deg\", \"anchor\": {\"x\": \"0 ft\", \"y\": \"121 in\", \"z\": \"14 ft\"}}}}"
#define EAST PLAN("east", P(40.1, 0) ", " P(50, 0) ", " P(50, 10) ", " P(40.1, 10), "6:12", "270", V(40.1, 0, 9))
#define GAPS "{\"planes\": [" SOUTH ", " NORTH ", " EAST "]"

static void gaps_are_refused_where_the_caller_asks_for_it(void)
{
    sw_error *error = refused(GAPS ", \"gaps\": \"refuse\"}", SW_GEOMETRY);
    const sw_error *ridge = fault_at(error, "input.planes[0].shape.plan.outer[2]"), *side = fault_at(error, "input.planes[0].shape.plan.outer[1]");
    CHECK(sw_error_other_count(error) == 1 && ridge != NULL && side != NULL);
    CHECK(strcmp(told(ridge, sw_error_message), "a gap between edge 2 of south and edge 0 of north") == 0);
    CHECK(strcmp(told(ridge, sw_error_value), "25.4 mm") == 0);
    CHECK(strncmp(told(ridge, sw_error_allowed), "edges within ", 13) == 0);
    CHECK(strstr(told(ridge, sw_error_cure), "a tolerance of at least 25.4 mm") != NULL);
    CHECK(strcmp(told(side, sw_error_message), "a gap between edge 1 of south and edge 3 of east") == 0);
    CHECK(strcmp(told(side, sw_error_value), "30.48 mm") == 0);
    sw_error_free(error);
}

static void gaps_are_told_where_he_does_not(void)
{
    static char out[65536];
    char message[256] = "";
    CHECK(sw_compute_json(TEXT("roof.roof-input"), TEXT(GAPS "}"), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(json_at(out, "cautions.count", text, sizeof text) && strcmp(text, "2") == 0);
    CHECK(json_at(out, "cautions[1].message", message, sizeof message) && strstr(message, "edge 2 of south and edge 0 of north") && strstr(message, "25.4 mm"));
    CHECK(json_at(out, "lines.count", text, sizeof text) && strcmp(text, "12") == 0);
    /* With a tolerance over both they are one ridge and one shared line. */
    CHECK(sw_compute_json(TEXT("roof.roof-input"), TEXT(GAPS ", \"tolerance\": \"2 in\"}"), out, sizeof out, NULL, NULL) == SW_OK);
    CHECK(json_at(out, "cautions.count", text, sizeof text) && strcmp(text, "0") != 0);
    CHECK(json_at(out, "lines.count", text, sizeof text) && strcmp(text, "10") == 0);
}

#define FLAT(name, ring) PLAN(name, ring, "6:12", "270", V(0, 0, 9))

/* One face of each kind that no roof has, beside a sound one; the figures are plane geometry in feet of 304.8 mm. */
static void every_bad_face_stands_in_one_refusal(void)
{
    static const char roof[] = "{\"planes\": ["
        FLAT("good", P(0, 0) ", " P(9, 0) ", " P(9, 9) ", " P(0, 9)) ", "
        FLAT("touching", P(20, 0) ", " P(24, 0) ", " P(24, 4) ", " P(22, 0) ", " P(20, 4)) ", "
        FLAT("crossing", P(30, 0) ", " P(34, 4) ", " P(34, 0) ", " P(30, 5)) ", "
        FLAT("no area", P(40, 0) ", " P(44, 0) ", " P(42, 0)) ", "
        FLAT("doubled", P(50, 0) ", " P(54, 0) ", " P(54, 0) ", " P(54, 4)) ", "
        FLAT("spiked", P(60, 0) ", " P(64, 0) ", " P(64, 4) ", " P(64, 7) ", " P(64, 4) ", " P(60, 4)) ", "
        SPACE("upright", V(70, 0, 0) ", " V(74, 0, 0) ", " V(74, 0, 4) ", " V(70, 0, 4)) ", "
        SPACE("down", V(80, 0, 0) ", " V(80, 4, 2) ", " V(84, 4, 3) ", " V(84, 0, 0)) ", "
        SPACE("bent", V(90, 0, 0) ", " V(94, 0, 0) ", " V(94, 4, 3) ", " V(90, 4, 2)) ", "
        SPACE("wide", V(0, 0, 0) ", {\"x\": \"40000 m\", \"y\": \"8 ft\", \"z\": \"4 ft\"}, " V(0, 9, 4)) ", "
        FLAT("on top", P(1, 1) ", " P(8, 1) ", " P(8, 8)) ", "
        PLAN("steep", P(100, 0) ", " P(104, 0) ", " P(104, 4), "6:12", "270", V(100, 0, 9)) ", "
        PLAN("beside", P(104.1, 0) ", " P(108, 0) ", " P(108, 4) ", " P(104.1, 4), "6:12", "270", V(104.1, 0, 9))
        "], \"gaps\": \"refuse\"}";
    static const struct {
        const char *path, *message, *value;
    } wanted[] = {
        {"input.planes[1].shape.plan.outer[0]", "meets", "at 6705.6 mm, 0 mm"},
        {"input.planes[2].shape.plan.outer[0]", "meets", "at 9821.333 mm, 677.333 mm"},
        {"input.planes[3].shape.plan.outer", "no area", "0 m2"},
        {"input.planes[4].shape.plan.outer[2]", "on its neighbour", "0 mm"},
        {"input.planes[5].shape.plan.outer[3]", "runs back", "914.4 mm"},
        {"input.planes[6].shape.space.outer", "vertical", "90 deg"},
        {"input.planes[7].shape.space.outer", "faces down", "deg"},
        {"input.planes[8].shape.space.outer[2]", "above the plane", "mm"},
        {"input.planes[9].shape.space.outer[1]", "too far", "40000000 mm"},
        {"input.planes[10]", "overlap", "mm deep"},
        {"input.planes[11].shape.plan.outer[1]", "a gap between edge 1 of steep and edge 3 of beside", "30.48 mm"},
    };
    char whole[16384];
    sw_error *error = refused(roof, SW_GEOMETRY);
    size_t i;
    /* 23 faults of the faces, some of them with more than one, and the gap. */
    CHECK(1 + sw_error_other_count(error) == 24);
    for (i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        const sw_error *fault = fault_at(error, wanted[i].path);
        CHECK(fault != NULL);
        if (!fault) printf("  nothing at %s\n", wanted[i].path);
        CHECK(!fault || strstr(told(fault, sw_error_message), wanted[i].message) != NULL);
        CHECK(!fault || strstr(told(fault, sw_error_value), wanted[i].value) != NULL);
    }
    /* The whole as one text names every plane at fault, and not the sound one. */
    CHECK(sw_error_text(error, whole, sizeof whole, NULL) == SW_OK);
    for (i = 0; i < 12; i++) {
        sprintf(text, "input.planes[%lu]", (unsigned long)i);
        CHECK((strstr(whole, text) != NULL) == (i > 0));
    }
    if (sw_test_faults) printf("%s\n", whole);
    sw_error_free(error);
}

int main(void)
{
    RUN(every_bad_face_stands_in_one_refusal);
    RUN(gaps_are_refused_where_the_caller_asks_for_it);
    RUN(gaps_are_told_where_he_does_not);
    return closing_line();
}
