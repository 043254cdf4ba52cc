/* The example jobs: every figure that `tests/jobs` holds, which is what Rust gives, out of the packet's JSON. Run from the repository's root. */
#include "check.h"
#include "json_at.h"
#include "read_file.h"

/* Where a path's head leads, found once for all lines with the same head: `planes[3]`, `junctions[12]`, `order`. */
struct head {
    char text[64];
    const char *value;
};

static const char *rest_after(const char *json, const char *path, struct head *head)
{
    size_t len = strcspn(path, ".[");
    const char *value = json;
    if (path[len] == '[') len += strcspn(path + len, "]") + 1;
    if (len >= sizeof head->text) return NULL;
    if (!head->value || strncmp(head->text, path, len) != 0 || head->text[len]) {
        size_t name = strcspn(path, ".[");
        memcpy(head->text, path, len);
        head->text[len] = '\0';
        value = json_field(json, path, name);
        if (value && path[name] == '[') value = json_element(value, strtoul(path + name + 1, NULL, 10));
        head->value = value;
    }
    return path + len;
}

static void gives_its_figures(const char *name, size_t least)
{
    char path[128], text[512], wanted[64];
    struct head head = {"", NULL};
    sw_packet *packet = NULL;
    sw_error *error = NULL;
    char *job, *held, *json, *line;
    size_t needed = 0, lines = 0, wrong = 0, copings = 0, pipes = 0, order = 0;
    snprintf(path, sizeof path, "core/examples/%s_job.json", name);
    job = read_file(path);
    snprintf(path, sizeof path, "tests/jobs/%s.figures", name);
    held = read_file(path);
    CHECK(job && held);
    if (!job || !held) return;
    CHECK(sw_job_packet(TEXT(job), NULL, NULL, &packet, &error) == SW_OK);
    CHECK(sw_packet_json(packet, NULL, 0, &needed, NULL) == SW_OK);
    json = malloc(needed + 1);
    if (!json || sw_packet_json(packet, json, needed, NULL, NULL) != SW_OK) exit(2);
    for (line = strtok(held, "\n"); line; line = strtok(NULL, "\n"), lines++) {
        char *value = strstr(line, " = ");
        const char *rest;
        CHECK(value != NULL);
        if (!value) break;
        *value = '\0';
        value += 3;
        rest = rest_after(json, line, &head);
        copings += strncmp(line, "copings[", 8) == 0;
        pipes += strncmp(line, "pipes[", 6) == 0;
        order += strncmp(line, "order[", 6) == 0;
        if (rest && *rest == '.' && head.value && *head.value == '[' && strcmp(rest, ".count") == 0) {
            snprintf(wanted, sizeof wanted, "%lu", (unsigned long)json_count(head.value));
            if (strcmp(wanted, value) == 0) continue;
        } else if (rest && head.value && json_at(head.value, rest, text, sizeof text) && strcmp(text, value) == 0) {
            continue;
        }
        if (wrong++ < 5) printf("  %s: %s is held to be %s, and is %s\n", name, line, value, rest && head.value && json_at(head.value, rest, text, sizeof text) ? text : "not there");
    }
    CHECK(wrong == 0 && lines >= least && order > 20);
    CHECK((copings > 0 && pipes > 0) == (strcmp(name, "annexe") == 0));
    free(job);
    free(held);
    free(json);
    sw_packet_free(packet);
}

static void the_annexe_gives_its_panels_copings_step_and_pipe(void)
{
    gives_its_figures("annexe", 300);
}

static void the_ropewalk_gives_its_panels_and_expansion_joints(void)
{
    gives_its_figures("ropewalk", 300);
}

static void the_maltings_gives_its_panels_and_joints_across_them(void)
{
    gives_its_figures("maltings", 300);
}

int main(void)
{
    RUN(the_annexe_gives_its_panels_copings_step_and_pipe);
    RUN(the_ropewalk_gives_its_panels_and_expansion_joints);
    RUN(the_maltings_gives_its_panels_and_joints_across_them);
    return closing_line();
}
