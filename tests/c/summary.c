/* Reads a job file and prints what the packet comes to: the example of a whole job in C.
 *
 *     cc summary.c $(pkg-config --cflags --libs seamwright) -o summary
 *     ./summary job.json
 */
#include <seamwright.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The file's bytes; NULL if it cannot be read. */
static char *read_file(const char *path, size_t *len)
{
    FILE *file = fopen(path, "rb");
    char *bytes = NULL, *grown;
    size_t room = 0;
    *len = 0;
    if (!file) return NULL;
    do {
        room = room ? room * 2 : 65536;
        if ((grown = realloc(bytes, room)) == NULL) break;
        bytes = grown;
        *len += fread(bytes + *len, 1, room - *len, file);
    } while (*len == room);
    if (!grown || ferror(file)) {
        free(bytes);
        bytes = NULL;
    }
    fclose(file);
    return bytes;
}

/* Shows the work on standard error. Another answer than 0 would stop it. */
static int32_t show(sw_stage stage, size_t done, size_t of, void *user)
{
    char name[64] = "";
    (void)user;
    sw_stage_name(stage, name, sizeof name, NULL, NULL);
    if (done == of) fprintf(stderr, "%s: %lu\n", name, (unsigned long)of);
    return 0;
}

static void print_length(const char *what, sw_length length)
{
    char text[64] = "";
    sw_length_format(length, "ft-in/16", strlen("ft-in/16"), text, sizeof text, NULL, NULL);
    printf("%-22s %s\n", what, text);
}

static void print_count(const char *what, uint64_t count)
{
    printf("%-22s %llu\n", what, (unsigned long long)count);
}

/* Everything that the error says, however long. */
static void print_error(const sw_error *error)
{
    size_t needed = 0;
    char *text;
    if (sw_error_text(error, NULL, 0, &needed) != SW_OK || (text = malloc(needed)) == NULL) return;
    if (sw_error_text(error, text, needed, NULL) == SW_OK) fprintf(stderr, "%s\n", text);
    free(text);
}

int main(int count, char **arguments)
{
    size_t len;
    char *job;
    sw_packet *packet;
    sw_error *error;
    sw_summary s;
    if (count != 2 || (job = read_file(arguments[1], &len)) == NULL) {
        fprintf(stderr, "give a job file that can be read\n");
        return 2;
    }
    if (sw_job_packet(job, len, show, NULL, &packet, &error) != SW_OK) {
        print_error(error);
        sw_error_free(error);
        free(job);
        return 1;
    }
    free(job);
    if (sw_packet_summary(packet, &s, NULL) == SW_OK) {
        print_count("planes", s.planes);
        print_count("panels", s.panels);
        print_length("shortest panel", s.shortest);
        print_length("longest panel", s.longest);
        print_length("panels, all together", s.panel_length);
        print_length("coil", s.coil);
        print_count("trims", s.trims);
        print_count("sticks of trim", s.sticks);
        print_count("closures", s.closures);
        print_count("cautions", s.cautions);
        print_count("rows not engineered", s.not_engineered_rows);
        print_count("figures from memory", s.from_memory);
    }
    sw_packet_free(packet);
    return 0;
}
