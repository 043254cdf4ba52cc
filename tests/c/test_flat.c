#include "check.h"
#include <math.h>
#include <stdlib.h>

/* An angle of 2 in by 3 in, 0.05 in thick with the same radius: R + T = 0.1 in, so the tangent line is at 1.9 in. */
#define PROFILE(second)                                                                        \
    "{\"thickness\": \"0.05 in\", \"legs\": ["                                                   \
    "{\"name\": \"a\", \"length\": \"2 in\", \"start\": \"sheet-edge\", \"end\": \"outer-corner\"},"  \
    "{\"name\": \"b\", \"length\": " second ", \"start\": \"outer-corner\", \"end\": \"sheet-edge\"}]," \
    "\"bends\": [{\"angle\": \"90 deg\", \"direction\": \"down\", \"inside_radius\": \"0.05 in\"}], \"painted\": \"upper\"}"
#define PATTERN(second, rule) "{\"profile\": " PROFILE(second) ", \"rule\": " rule "}"

static const int64_t MIL = 25400000;

static sw_flat *angle(void)
{
    sw_flat *flat = NULL;
    CHECK(sw_flat_from_json(TEXT(PATTERN("\"3 in\"", "{\"neutral-axis\": {\"factor\": 0.5}}")), &flat, NULL) == SW_OK);
    CHECK(flat != NULL);
    return flat;
}

static void an_angle_unfolds(void)
{
    /* pi/2 (0.05 + 0.025) in = 0.117810 in for the bend. */
    const double bend_mm = acos(0) * 0.075 * 25.4;
    sw_flat *flat = angle();
    sw_length girth = {0};
    sw_flat_bend bend;
    sw_flat_leg first, second;
    char name[32] = "";
    memset(&bend, 0, sizeof bend);
    CHECK(sw_flat_bend_count(flat) == 1);
    CHECK(sw_flat_leg_count(flat) == 2);
    CHECK(sw_flat_girth(flat, &girth, NULL) == SW_OK);
    CHECK(fabs((double)girth.pm / 1e9 - (1.9 + 2.9) * 25.4 - bend_mm) < 1e-8);
    CHECK(sw_flat_bend_at(flat, 0, &bend, NULL) == SW_OK);
    CHECK(bend.from.pm == 1900 * MIL);
    CHECK(fabs((double)(bend.line.pm - bend.from.pm) / 1e9 - bend_mm / 2) < 1e-8);
    CHECK(bend.to.pm == girth.pm - 2900 * MIL);
    CHECK(bend.angle.degrees == 90);
    CHECK(bend.direction == SW_DIRECTION_DOWN);
    CHECK(sw_flat_leg_at(flat, 0, &first, NULL) == SW_OK);
    CHECK(sw_flat_leg_at(flat, 1, &second, NULL) == SW_OK);
    CHECK(first.from.pm == 0 && first.to.pm == bend.from.pm);
    CHECK(second.from.pm == bend.to.pm && second.to.pm == girth.pm);
    CHECK(sw_flat_rule_name(flat, name, sizeof name, NULL, NULL) == SW_OK);
    CHECK(strcmp(name, "neutral axis") == 0);
    sw_flat_free(flat);
}

static void the_name_follows_the_rules_of_text(void)
{
    sw_flat *flat = angle();
    size_t needed = 0;
    char name[8] = "";
    CHECK(sw_flat_rule_name(flat, NULL, 0, &needed, NULL) == SW_OK);
    CHECK(needed == sizeof "neutral axis");
    CHECK(sw_flat_rule_name(flat, name, sizeof name, &needed, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(strcmp(name, "neutral") == 0);
    CHECK(sw_flat_rule_name(flat, NULL, 0, NULL, NULL) == SW_MISSING);
    sw_flat_free(flat);
}

static void what_is_no_pattern_is_refused_at_its_place(void)
{
    static const struct {
        const char *json;
        sw_status status;
        const char *path;
    } bad[] = {
        {"", SW_FORMAT, "pattern"},
        {"{}", SW_MISSING, "pattern.profile"},
        {"[[[[[", SW_FORMAT, NULL},
        {"{\"profile\": " PROFILE("\"3 in\"") "}", SW_MISSING, "pattern.rule"},
        {PATTERN("\"3 in\"", "\"guess\""), SW_UNKNOWN, "pattern.rule"},
        {PATTERN("3", "\"aviation\""), SW_FORMAT, "pattern.profile.legs[1].length"},
        {PATTERN("\"3\"", "\"aviation\""), SW_UNIT, "pattern.profile.legs[1].length"},
        {PATTERN("\"3 in\", \"width\": 1", "\"aviation\""), SW_UNKNOWN, "pattern.profile.legs[1].width"},
        {PATTERN("\"3 in\", \"length\": \"3 in\"", "\"aviation\""), SW_CONFLICT, "pattern.profile.legs[1].length"},
        /* These are read, but cannot be bent. */
        {PATTERN("\"0 in\"", "\"aviation\""), SW_OUT_OF_RANGE, "pattern.profile.legs[1].length"},
        {"{\"profile\": {\"thickness\": \"1 mm\", \"legs\": [], \"painted\": \"upper\"}, \"rule\": \"aviation\"}", SW_MISSING, "pattern.profile.legs"},
    };
    sw_flat *const before = (sw_flat *)&bad;
    sw_flat *flat = before;
    sw_error *e;
    char path[128];
    size_t i;
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        sw_status status = sw_flat_from_json(TEXT(bad[i].json), &flat, &e);
        CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
        if (status != bad[i].status || (bad[i].path && strcmp(path, bad[i].path) != 0)) printf("%s: status %d at %s\n", bad[i].json, (int)status, path);
        CHECK(status == bad[i].status);
        CHECK(!bad[i].path || strcmp(path, bad[i].path) == 0);
        sw_error_free(e);
    }
    CHECK(sw_flat_from_json(NULL, 0, &flat, NULL) == SW_MISSING);
    CHECK(sw_flat_from_json("\xff", 1, &flat, NULL) == SW_PARSE);
    CHECK(sw_flat_from_json(TEXT("{}"), NULL, NULL) == SW_MISSING);
    CHECK(flat == before);
}

static void a_pattern_too_large_or_too_deep_is_refused(void)
{
    const size_t size = ((size_t)1 << 20) + 1;
    char *text = malloc(size);
    sw_flat *flat = NULL;
    CHECK(text != NULL);
    if (!text) return;
    memset(text, ' ', size);
    CHECK(sw_flat_from_json(text, size, &flat, NULL) == SW_TOO_LARGE);
    CHECK(sw_flat_from_json(text, size - 1, &flat, NULL) == SW_FORMAT);
    memset(text, '[', size);
    CHECK(sw_flat_from_json(text, size - 1, &flat, NULL) != SW_OK);
    CHECK(flat == NULL);
    free(text);
}

static void no_part_is_beyond_the_last(void)
{
    sw_flat *flat = angle();
    sw_flat_bend bend;
    sw_flat_leg leg;
    sw_error *e = NULL;
    char path[16] = "";
    memset(&bend, 0x55, sizeof bend);
    CHECK(sw_flat_bend_at(flat, 1, &bend, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "index") == 0);
    sw_error_free(e);
    CHECK(sw_flat_bend_at(flat, SIZE_MAX, &bend, NULL) == SW_OUT_OF_RANGE);
    CHECK(((unsigned char *)&bend)[0] == 0x55);
    CHECK(sw_flat_leg_at(flat, 2, &leg, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_flat_bend_at(flat, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_flat_leg_at(flat, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_flat_girth(flat, NULL, NULL) == SW_MISSING);
    sw_flat_free(flat);
}

static void null_is_no_flat_pattern(void)
{
    sw_length girth = {77};
    sw_flat_bend bend;
    sw_flat_leg leg;
    char name[8];
    sw_flat_free(NULL);
    CHECK(sw_flat_bend_count(NULL) == 0);
    CHECK(sw_flat_leg_count(NULL) == 0);
    CHECK(sw_flat_girth(NULL, &girth, NULL) == SW_MISSING);
    CHECK(sw_flat_bend_at(NULL, 0, &bend, NULL) == SW_MISSING);
    CHECK(sw_flat_leg_at(NULL, 0, &leg, NULL) == SW_MISSING);
    CHECK(sw_flat_rule_name(NULL, name, sizeof name, NULL, NULL) == SW_MISSING);
    CHECK(girth.pm == 77);
}

static void a_trim_is_drawn(void)
{
    static const char asked[] = "{\"profile\": {\"thickness\": \"0.024 in\", \"painted\": \"upper\", \"bends\": [], \"legs\": [{\"name\": \"strip\", \"length\": \"6 in\", "
                                "\"start\": \"sheet-edge\", \"end\": \"sheet-edge\"}]}, \"rule\": \"sharp-corner\", \"name\": \"strip\", \"format\": \"mm\", \"view\": ";
    char order[600], drawing[20000], path[64] = "";
    size_t needed = 0;
    sw_error *e = NULL;
    int length = snprintf(order, sizeof order, "%s\"flat-svg\"}", asked);
    CHECK(sw_drawing_json("trim.drawn-trim", 15, order, (size_t)length, drawing, sizeof drawing, &needed, NULL) == SW_OK);
    CHECK(strstr(drawing, "girth 152.4 mm") != NULL);
    length = snprintf(order, sizeof order, "%s{\"flat-dxf\": {\"unit\": \"inch\", \"piece\": \"10 ft\"}}}", asked);
    CHECK(sw_drawing_json("trim.drawn-trim", 15, order, (size_t)length, drawing, sizeof drawing, &needed, NULL) == SW_OK);
    CHECK(strstr(drawing, "BLANK-EDGE") != NULL);
    length = snprintf(order, sizeof order, "%s{\"flat-dxf\": {\"unit\": \"inch\", \"piece\": \"0 ft\"}}}", asked);
    CHECK(sw_drawing_json("trim.drawn-trim", 15, order, (size_t)length, drawing, sizeof drawing, &needed, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "input.view.flat-dxf.piece") == 0);
    sw_error_free(e);
    CHECK(sw_drawing_json("trim.drawn-trim", 15, NULL, 0, NULL, 0, NULL, NULL) == SW_MISSING);
}

static void a_blank_is_drawn(void)
{
    /* A panel that meets a hip at 45 degrees: its fold goes down. */
    static const char asked[] = "{\"of\": {\"end-fold\": {\"width\": \"16 in\", \"meeting\": \"%d deg\", \"hem\": {\"closed-hem\": {\"width\": \"1 in\", "
                                "\"direction\": \"down\"}}, \"thickness\": \"0.024 in\", \"rule\": \"sharp-corner\", \"ends\": \"mirrored\", "
                                "\"shown\": \"12 in\"}}, \"name\": \"panel end\", \"format\": \"in/16\", \"view\": %s}";
    char order[600], drawing[20000], path[64] = "";
    size_t needed = 0;
    sw_error *e = NULL;
    int length = snprintf(order, sizeof order, asked, 45, "\"svg\"");
    CHECK(sw_drawing_json("trim.drawn-blank", 16, order, (size_t)length, drawing, sizeof drawing, &needed, NULL) == SW_OK);
    CHECK(strstr(drawing, "end fold down 180") != NULL);
    length = snprintf(order, sizeof order, asked, 45, "{\"dxf\": {\"unit\": \"inch\"}}");
    CHECK(sw_drawing_json("trim.drawn-blank", 16, order, (size_t)length, drawing, sizeof drawing, &needed, NULL) == SW_OK);
    CHECK(strstr(drawing, "BEND-DOWN") != NULL);
    length = snprintf(order, sizeof order, asked, 180, "\"svg\"");
    CHECK(sw_drawing_json("trim.drawn-blank", 16, order, (size_t)length, drawing, sizeof drawing, &needed, &e) == SW_OUT_OF_RANGE);
    CHECK(sw_error_path(e, path, sizeof path, NULL) == SW_OK);
    CHECK(strcmp(path, "input.of.end-fold.meeting") == 0);
    sw_error_free(e);
}

int main(void)
{
    RUN(an_angle_unfolds);
    RUN(the_name_follows_the_rules_of_text);
    RUN(what_is_no_pattern_is_refused_at_its_place);
    RUN(a_pattern_too_large_or_too_deep_is_refused);
    RUN(no_part_is_beyond_the_last);
    RUN(null_is_no_flat_pattern);
    RUN(a_trim_is_drawn);
    RUN(a_blank_is_drawn);
    return closing_line();
}
