/* The whole job: run from the repository's root, where the demo job is read. */
#include "check.h"
#include "json_at.h"
#include "read_file.h"

#define DEMO "core/examples/demo_job.json"

static char *demo;

/* The demo with the first `from` made into `to`. */
static char *demo_with(const char *from, const char *to)
{
    const char *at = strstr(demo, from);
    char *made = malloc(strlen(demo) + strlen(to) + 1);
    if (!at || !made) {
        printf("the demo job has no %s\n", from);
        exit(2);
    }
    memcpy(made, demo, (size_t)(at - demo));
    strcpy(made + (at - demo), to);
    strcat(made, at + strlen(from));
    return made;
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

static char *json_of(const sw_packet *packet)
{
    size_t needed = 0;
    char *json = NULL;
    if (sw_packet_json(packet, NULL, 0, &needed, NULL) == SW_OK && (json = malloc(needed)) != NULL)
        if (sw_packet_json(packet, json, needed, NULL, NULL) != SW_OK) json[0] = '\0';
    return json;
}

/* The whole number at a path; -1 where there is none. */
static long long number_at(const char *json, const char *path)
{
    char text[64];
    return json && json_at(json, path, text, sizeof text) ? atoll(text) : -1;
}

static void the_demo_gives_a_packet_whose_figures_agree(void)
{
    sw_packet *packet = NULL;
    sw_error *error = NULL;
    sw_summary s;
    sw_length longest;
    char *json, path[64], text[64];
    long long panels = 0;
    unsigned i;
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, &packet, &error) == SW_OK);
    CHECK(packet != NULL && error == NULL);
    CHECK(sw_packet_summary(packet, &s, NULL) == SW_OK);
    CHECK(s.planes >= 8 && s.panels >= 150 && s.pieces >= s.panels && s.trims > 0 && s.sticks >= s.trims && s.closures > 0);
    CHECK(0 < s.shortest.pm && s.shortest.pm < s.longest.pm && s.longest.pm < s.panel_length.pm && s.coil.pm > 0);
    CHECK((json = json_of(packet)) != NULL);
    CHECK(json_at(json, "format", text, sizeof text) && strcmp(text, "seamwright-packet") == 0);
    CHECK(number_at(json, "version") == 1);
    CHECK(number_at(json, "planes.count") == (long long)s.planes && number_at(json, "trims.count") == (long long)s.trims);
    CHECK(number_at(json, "cautions.count") == (long long)s.cautions && number_at(json, "summary.closures") == (long long)s.closures);
    CHECK(number_at(json, "summary.not_engineered_rows") == (long long)s.not_engineered_rows);
    CHECK(number_at(json, "summary.sources.memory") == (long long)s.from_memory);
    for (i = 0; i < s.planes; i++) {
        sprintf(path, "planes[%u].laid.panels.count", i);
        panels += number_at(json, path);
    }
    CHECK(panels == (long long)s.panels);
    CHECK(json_at(json, "summary.longest", text, sizeof text));
    CHECK(sw_length_parse(TEXT(text), &longest, NULL) == SW_OK && longest.pm == s.longest.pm);
    free(json);
    sw_packet_free(packet);
    sw_packet_free(NULL);
}

static void the_same_job_gives_the_same_bytes(void)
{
    sw_packet *first = NULL, *second = NULL;
    char *a, *b;
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, &first, NULL) == SW_OK && sw_job_packet(TEXT(demo), NULL, NULL, &second, NULL) == SW_OK);
    a = json_of(first);
    b = json_of(second);
    CHECK(a != NULL && b != NULL && strcmp(a, b) == 0);
    free(a);
    free(b);
    sw_packet_free(first);
    sw_packet_free(second);
}

/* What the callback saw, and where it stops. */
struct watch {
    unsigned calls, stop_at;
    sw_stage last;
    int in_order;
};

static int32_t watched(sw_stage stage, size_t done, size_t of, void *user)
{
    struct watch *w = user;
    if (stage < w->last || done > of) w->in_order = 0;
    w->last = stage;
    return ++w->calls == w->stop_at ? 7 : 0;
}

static void progress_is_told_in_order_and_may_stop_the_work(void)
{
    struct watch all = {0, 0, 0, 1}, some = {0, 3, 0, 1};
    sw_packet *packet = NULL, *untouched = (sw_packet *)&some;
    sw_error *error = NULL;
    char path[32] = "", name[32] = "";
    CHECK(sw_job_packet(TEXT(demo), watched, &all, &packet, NULL) == SW_OK);
    CHECK(all.calls > 7 && all.in_order && all.last == SW_STAGE_ORDER);
    sw_packet_free(packet);
    CHECK(sw_job_packet(TEXT(demo), watched, &some, &untouched, &error) == SW_CANCELLED);
    CHECK(some.calls == 3 && untouched == (sw_packet *)&some);
    CHECK(sw_error_kind(error) == SW_CANCELLED && sw_error_path(error, path, sizeof path, NULL) == SW_OK && strcmp(path, "progress") == 0);
    sw_error_free(error);
    CHECK(sw_stage_name(SW_STAGE_CLIPS, name, sizeof name, NULL, NULL) == SW_OK && strcmp(name, "clips and movement") == 0);
    CHECK(sw_stage_name(0, name, sizeof name, NULL, NULL) == SW_UNKNOWN && sw_stage_name(8, name, sizeof name, NULL, NULL) == SW_UNKNOWN);
}

static void the_json_follows_the_rules_of_text(void)
{
    sw_packet *packet = NULL;
    char out[10] = "?";
    size_t needed = 0, again = 0;
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, &packet, NULL) == SW_OK);
    CHECK(sw_packet_json(packet, NULL, 0, &needed, NULL) == SW_OK && needed > 100000);
    CHECK(sw_packet_json(packet, out, sizeof out, &again, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(strcmp(out, "{\"format\"") == 0 && again == needed);
    CHECK(sw_packet_json(packet, out, 0, NULL, NULL) == SW_BUFFER_TOO_SMALL);
    CHECK(sw_packet_json(packet, NULL, 0, NULL, NULL) == SW_MISSING);
    CHECK(sw_packet_json(packet, NULL, 5, &needed, NULL) == SW_MISSING);
    sw_packet_free(packet);
}

/* The number of the file of this name; the count of files where none has it. */
static size_t file_named(const sw_packet *packet, size_t count, const char *wanted)
{
    char name[128];
    size_t i;
    for (i = 0; i < count; i++)
        if (sw_packet_file_name(packet, i, name, sizeof name, NULL, NULL) == SW_OK && strcmp(name, wanted) == 0) break;
    return i;
}

static void the_files_come_by_number(void)
{
    sw_packet *packet = NULL;
    char *json = NULL, name[128];
    uint8_t *bytes, few[9] = {0};
    size_t count = 0, crew = 0, needed = 0, i;
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, &packet, NULL) == SW_OK);
    CHECK(sw_packet_file_count(packet, &count, NULL) == SW_OK);
    for (i = 0; i < count; i++) {
        CHECK(sw_packet_file_name(packet, i, name, sizeof name, NULL, NULL) == SW_OK);
        CHECK(name[0] != '/' && strstr(name, "..") == NULL && file_named(packet, count, name) == i);
        CHECK(sw_packet_file_bytes(packet, i, NULL, 0, &needed, NULL) == SW_OK && needed > 0);
        if (strncmp(name, "crew/", 5) == 0) crew++;
    }
    json = json_of(packet);
    CHECK((long long)crew == number_at(json, "junctions.count"));
    free(json);
    i = file_named(packet, count, "plan.svg");
    CHECK(sw_packet_file_bytes(packet, i, NULL, 0, &needed, NULL) == SW_OK && (bytes = malloc(needed + 1)) != NULL);
    bytes[needed] = 0;
    CHECK(sw_packet_file_bytes(packet, i, bytes, needed, NULL, NULL) == SW_OK);
    CHECK(strstr((char *)bytes, "<svg") != NULL && strstr((char *)bytes, "</svg>") != NULL);
    CHECK(sw_packet_file_bytes(packet, i, few, 8, &needed, NULL) == SW_BUFFER_TOO_SMALL && memcmp(few, bytes, 8) == 0 && few[8] == 0);
    free(bytes);
    CHECK(file_named(packet, count, "office/cautions.md") < count && file_named(packet, count, "lists/order.csv") < count);
    CHECK(sw_packet_file_name(packet, 0, NULL, 0, &needed, NULL) == SW_OK && needed == sizeof "packet.json");
    CHECK(sw_packet_file_name(packet, 0, name, 5, &needed, NULL) == SW_BUFFER_TOO_SMALL && strcmp(name, "pack") == 0);
    CHECK(sw_packet_file_name(packet, count, name, sizeof name, NULL, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_packet_file_bytes(packet, (size_t)-1, few, sizeof few, NULL, NULL) == SW_OUT_OF_RANGE);
    CHECK(sw_packet_file_bytes(packet, 0, NULL, 0, NULL, NULL) == SW_MISSING && sw_packet_file_bytes(packet, 0, NULL, 5, &needed, NULL) == SW_MISSING);
    CHECK(sw_packet_file_count(packet, NULL, NULL) == SW_MISSING && sw_packet_file_count(NULL, &needed, NULL) == SW_MISSING);
    CHECK(sw_packet_file_name(NULL, 0, name, sizeof name, NULL, NULL) == SW_MISSING);
    CHECK(sw_packet_file_bytes(NULL, 0, few, sizeof few, NULL, NULL) == SW_MISSING);
    sw_packet_free(packet);
}

static void a_null_is_refused_where_something_is_needed(void)
{
    sw_packet *packet = NULL;
    sw_summary summary;
    sw_error *error = NULL;
    char out[8], path[16] = "";
    CHECK(sw_job_packet(NULL, 0, NULL, NULL, &packet, &error) == SW_MISSING && packet == NULL);
    CHECK(sw_error_path(error, path, sizeof path, NULL) == SW_OK && strcmp(path, "job") == 0);
    sw_error_free(error);
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, NULL, &error) == SW_MISSING);
    CHECK(sw_error_path(error, path, sizeof path, NULL) == SW_OK && strcmp(path, "packet") == 0);
    sw_error_free(error);
    CHECK(sw_packet_summary(NULL, &summary, NULL) == SW_MISSING);
    CHECK(sw_packet_json(NULL, out, sizeof out, NULL, NULL) == SW_MISSING);
    CHECK(sw_job_packet(TEXT(demo), NULL, NULL, &packet, NULL) == SW_OK);
    CHECK(sw_packet_summary(packet, NULL, NULL) == SW_MISSING);
    sw_packet_free(packet);
}

/* One refusal: its status, its path, no packet, and an error that says something. */
static void refused(const char *job, size_t len, sw_status status, const char *path)
{
    sw_packet *packet = NULL;
    sw_error *error = NULL;
    char found[128] = "?", message[1024] = "";
    sw_status got = sw_job_packet(job, len, NULL, NULL, &packet, &error);
    CHECK(got == status);
    CHECK(packet == NULL && sw_error_kind(error) == got);
    CHECK(sw_error_path(error, found, sizeof found, NULL) == SW_OK && strcmp(found, path) == 0);
    CHECK(sw_error_message(error, message, sizeof message, NULL) == SW_OK && message[0]);
    if (sw_test_faults) printf("  status %d at %s, wanted %d at %s: %s\n", (int)got, found, (int)status, path, message);
    sw_error_free(error);
}

static void each_bad_document_has_its_kind_and_its_path(void)
{
    static const struct {
        const char *from, *to;
        sw_status status;
        const char *path;
    } bad[] = {
        {"\"format\": \"seamwright-job\"", "\"format\": \"job\"", SW_UNKNOWN, "job.format"},
        {"\"version\": 1", "\"version\": 9", SW_FORMAT, "job.version"},
        {"\"version\": 1", "\"version\": 1, \"colour\": \"red\"", SW_UNKNOWN, "job.colour"},
        {"\"version\": 1", "\"version\": 1, \"version\": 1", SW_CONFLICT, "job.version"},
        {"\"version\": 1,", "", SW_MISSING, "job.version"},
        {"\"name\": \"main south\"", "\"name\": \"main south\", \"hue\": 1", SW_UNKNOWN, "job.roof.planes[0].hue"},
        {"\"y\": \"0'-0\\\"\"", "\"y\": \"0,5 m\"", SW_PARSE, "job.roof.planes[0].shape.plan.outer[0].y"},
        {"\"y\": \"0'-0\\\"\"", "\"y\": 0", SW_FORMAT, "job.roof.planes[0].shape.plan.outer[0].y"},
        {"\"pitch\": \"8:12\"", "\"pitch\": \"90 deg\"", SW_OUT_OF_RANGE, "job.roof.planes[0].shape.plan.pitch"},
        /* What moving ends keep asks for more than the eave's fold. */
        {"\"supplies\": {", "\"supplies\": {\"movement\": {\"engagement\": \"2 in\"},", SW_CONFLICT, "job.supplies.movement.clearance"},
    };
    size_t i;
    refused("", 0, SW_FORMAT, "job");
    refused(TEXT("not JSON"), SW_FORMAT, "job");
    refused(TEXT("{"), SW_FORMAT, "job");
    refused(TEXT("null"), SW_FORMAT, "job");
    refused(TEXT("{}"), SW_MISSING, "job.format");
    for (i = 0; i < sizeof bad / sizeof *bad; i++) {
        char *job = demo_with(bad[i].from, bad[i].to);
        refused(TEXT(job), bad[i].status, bad[i].path);
        free(job);
    }
}

static void garbage_and_deep_nesting_are_ordinary_refusals(void)
{
    char *garbage = repeated("[\xff", (size_t)50 << 20), *arrays = repeated("[", 1000000), *objects = repeated("{\"roof\":", 100000);
    char *deep = malloc(strlen(demo) + strlen(arrays) + 1), bytes[] = {'{', (char)0xff, '}'};
    char *head = demo_with("\"version\": 1", "\"version\": ");
    size_t cut = (size_t)(strstr(head, "\"version\": ") - head) + strlen("\"version\": ");
    refused(TEXT(garbage), SW_TOO_LARGE, "job");
    refused(TEXT(arrays), SW_FORMAT, "job");
    refused(TEXT(objects), SW_UNKNOWN, "job.roof.roof");
    refused(bytes, sizeof bytes, SW_PARSE, "job");
    if (!deep) exit(2);
    memcpy(deep, head, cut);
    strcpy(deep + cut, arrays);
    refused(TEXT(deep), SW_FORMAT, "job.version");
    free(garbage);
    free(arrays);
    free(objects);
    free(deep);
    free(head);
}

int main(void)
{
    demo = read_file(DEMO);
    if (!demo) {
        printf("%s cannot be read; run from the repository's root\n0 passed, 1 failed\n", DEMO);
        return 1;
    }
    RUN(the_demo_gives_a_packet_whose_figures_agree);
    RUN(the_same_job_gives_the_same_bytes);
    RUN(progress_is_told_in_order_and_may_stop_the_work);
    RUN(the_json_follows_the_rules_of_text);
    RUN(the_files_come_by_number);
    RUN(a_null_is_refused_where_something_is_needed);
    RUN(each_bad_document_has_its_kind_and_its_path);
    RUN(garbage_and_deep_nesting_are_ordinary_refusals);
    free(demo);
    return closing_line();
}
