/* The guide's pages on junctions: every worked example is run by its calculation's name, its figures are reckoned again from the sums as printed, and what
 * stands in the result is held against them. Run from the repository's root.
 */
#include "check.h"
#include "json_at.h"
#include "read_file.h"
#include <ctype.h>
#include <math.h>

#define FOLDER "docs/junctions/"
#define MOST_FIGURES 128
#define PI 3.14159265358979323846

struct known {
    char name[256];
    double value;
};

static struct known known[MOST_FIGURES];
static size_t figures;

/* A sum as printed: numbers, symbols, + - * / ^, brackets, and the functions of degrees. A wrong one gives NAN. */
static const char *at;

static void blanks(void)
{
    while (*at == ' ') at++;
}

static double sum(void);

static double called(const char *name, double x)
{
    if (strcmp(name, "sin") == 0) return sin(x * PI / 180);
    if (strcmp(name, "cos") == 0) return cos(x * PI / 180);
    if (strcmp(name, "tan") == 0) return tan(x * PI / 180);
    if (strcmp(name, "asin") == 0) return asin(x) * 180 / PI;
    if (strcmp(name, "acos") == 0) return acos(x) * 180 / PI;
    if (strcmp(name, "atan") == 0) return atan(x) * 180 / PI;
    return strcmp(name, "sqrt") == 0 ? sqrt(x) : NAN;
}

static double atom(void)
{
    char name[256], *end;
    size_t len = 0, i;
    double value;
    blanks();
    if (*at == '(') {
        at++;
        value = sum();
        blanks();
        return *at == ')' ? (at++, value) : NAN;
    }
    if (isdigit((unsigned char)*at)) {
        value = strtod(at, &end);
        at = end;
        return value;
    }
    while ((isalnum((unsigned char)*at) || *at == '_') && len + 1 < sizeof name) name[len++] = *at++;
    name[len] = '\0';
    if (*at == '(') return called(name, atom());
    for (i = 0; i < figures; i++)
        if (strcmp(known[i].name, name) == 0) return known[i].value;
    return NAN;
}

static double power(void)
{
    double base;
    blanks();
    if (*at == '-') {
        at++;
        return -power();
    }
    base = atom();
    blanks();
    return *at == '^' ? (at++, pow(base, power())) : base;
}

static double product(void)
{
    double value = power();
    for (blanks(); *at == '*' || *at == '/'; blanks()) value = *at++ == '*' ? value * power() : value / power();
    return value;
}

static double sum(void)
{
    double value = product();
    for (blanks(); *at == '+' || *at == '-'; blanks()) value = *at++ == '+' ? value + product() : value - product();
    return value;
}

static double reckoned(const char *formula)
{
    double value;
    at = formula;
    value = sum();
    return *at ? NAN : value;
}

/* A quantity in inches, degrees or as a pure number; its unit after it. */
static double quantity(const char *text, char unit[8])
{
    char *end;
    double value = strtod(text, &end);
    strcpy(unit, "");
    if (*end == ':') {
        strcpy(unit, "deg");
        return atan(value / strtod(end + 1, &end)) * 180 / PI;
    }
    if (strcmp(end, " mm") == 0) {
        strcpy(unit, "in");
        return value / 25.4;
    }
    if (*end == ' ' && strlen(end + 1) < 8) strcpy(unit, end + 1);
    return value;
}

/* The value at a path: fields by a dot, entries by their number, or by name and where need be side, `lines[closure face@second].from_line`. */
static bool value_at(const char *json, const char *path, char *text, size_t size)
{
    while (json && *path) {
        size_t len = strcspn(path + 1, path[0] == '[' ? "]" : ".[") + 1, i;
        char step[128], *side, found[128];
        const char *entry;
        if (path[0] != '[') {
            json = json_field(json, path, len);
            path += len;
        } else if (isdigit((unsigned char)path[1])) {
            json = json_element(json, strtoul(path + 1, NULL, 10));
            path += len + 1;
        } else {
            if (len > sizeof step) return false;
            memcpy(step, path + 1, len - 1);
            step[len - 1] = '\0';
            if ((side = strchr(step, '@')) != NULL) *side++ = '\0';
            for (i = 0; (entry = json_element(json, i)) != NULL; i++)
                if (json_at(entry, "name", found, sizeof found) && strcmp(found, step) == 0 &&
                    (!side || (json_at(entry, "side", found, sizeof found) && strcmp(found, side) == 0)))
                    break;
            json = entry;
            path += len + 1;
        }
        if (*path == '.') path++;
    }
    return json && json_at(json, "", text, size);
}

/* The cells of a row, without blanks and backticks; how many. */
static size_t cells_of(const char *row, char cells[4][256])
{
    size_t count = 0;
    for (row++; *row && *row != '\n'; row++) {
        size_t len = strcspn(row, "|\n");
        const char *from = row, *to = row + len;
        while (from < to && strchr(" `", *from)) from++;
        while (from < to && strchr(" `", to[-1])) to--;
        if (row[len] != '|' || (size_t)(to - from) >= sizeof cells[0]) return 0;
        if (count < 4) {
            memcpy(cells[count], from, (size_t)(to - from));
            cells[count][to - from] = '\0';
        }
        count++;
        row += len;
    }
    return count;
}

/* What stands between two marks. */
static bool between(const char *text, const char *before, const char *after, char *out, size_t size)
{
    const char *from = strstr(text, before), *to = from ? strstr(from + strlen(before), after) : NULL;
    if (!to || (size_t)(to - from) >= size) return false;
    from += strlen(before);
    memcpy(out, from, (size_t)(to - from));
    out[to - from] = '\0';
    return true;
}

/* One page: how many of its figures stand in the result; what went wrong is printed and counted. Its calculation is given back. */
static size_t worked(const char *page, char calculation[64])
{
    char file[128], path[160], *text, *input, *out;
    const char *row;
    size_t needed = 0, in_result = 0;
    sw_error *error = NULL;
    snprintf(path, sizeof path, FOLDER "%s", page);
    if ((text = read_file(path)) == NULL || (row = strstr(text, "\n## Worked by hand\n")) == NULL) return 0;
    if (!between(text, "(inputs/", ")", file, sizeof file) || !between(text, "to the calculation `", "`", calculation, 64)) return 0;
    snprintf(path, sizeof path, FOLDER "inputs/%s", file);
    if ((input = read_file(path)) == NULL) return 0;
    CHECK(sw_compute_json(TEXT(calculation), TEXT(input), NULL, 0, &needed, &error) == SW_OK);
    if (error || (out = malloc(needed + 1)) == NULL) return 0;
    CHECK(sw_compute_json(TEXT(calculation), TEXT(input), out, needed, NULL, NULL) == SW_OK);
    json_without_blanks(input);
    figures = 0;
    while ((row = strchr(row, '\n')) != NULL && *++row) {
        char cells[4][256], unit[8], of[8], given[128];
        const char *point;
        double printed, value;
        int places, before = sw_test_faults;
        if (strncmp(row, "| ", 2) != 0 || cells_of(row, cells) != 4 || strcmp(cells[1], "by hand") == 0 || figures == MOST_FIGURES) continue;
        printed = quantity(cells[2], unit);
        point = strchr(cells[2], '.');
        places = point ? (int)strspn(point + 1, "0123456789") : 0;
        if (strcmp(cells[1], "given") == 0) {
            CHECK(value_at(input, cells[3], given, sizeof given));
            value = quantity(given, of);
            CHECK(strcmp(of, unit) == 0);
        } else {
            value = reckoned(cells[1]);
            if (cells[3][0]) {
                CHECK(value_at(out, cells[3], given, sizeof given));
                CHECK(fabs(quantity(given, of) - value) < 5e-7 && strcmp(of, unit) == 0);
                in_result++;
            }
        }
        CHECK(fabs(value - printed) <= 0.5 * pow(10, -places) * (1 + 1e-9));
        if (sw_test_faults > before) printf("  %s: %s, %s\n", page, cells[0], cells[1]);
        strcpy(known[figures].name, cells[0]);
        known[figures++].value = value;
    }
    free(text);
    free(input);
    free(out);
    return in_result;
}

static void every_page_of_the_guide_gives_its_figures(void)
{
    char *index = read_file(FOLDER "README.md"), page[64], names[8192], seen[4096] = "\n", calculation[64], one[80];
    const char *from, *name;
    size_t pages = 0;
    CHECK(index != NULL);
    for (from = index; from && (from = strstr(from, "| [")) != NULL; from++) {
        if (!between(from, "](", ")", page, sizeof page)) break;
        CHECK(worked(page, calculation) >= 3);
        snprintf(one, sizeof one, "%s\n", calculation);
        if (!strstr(seen, one)) strcat(seen, one);
        pages++;
    }
    CHECK(pages >= 18);
    /* Every calculation of the room that gives a section has a page. */
    CHECK(sw_calculation_names(names, sizeof names, NULL, NULL) == SW_OK);
    for (name = strtok(names, "\n"); name; name = strtok(NULL, "\n")) {
        static const char *const parts[] = {"cap-outline", "end-proposal", "kick-out",   "levels",         "line-order", "rule-check",
                                            "section-fit",  "water-path", "whole-junction", "work-plan"};
        size_t i, is_part = 0;
        if (strncmp(name, "junction.", 9) != 0) continue;
        for (i = 0; i < sizeof parts / sizeof *parts; i++) is_part |= strcmp(name + 9, parts[i]) == 0;
        snprintf(one, sizeof one, "\n%s\n", name);
        if (is_part || strstr(seen, one)) continue;
        CHECK(!"every kind has a page");
        printf("  %s\n", name);
    }
    free(index);
}

static void a_wrong_figure_would_be_seen(void)
{
    char unit[8], text[64];
    figures = 1;
    strcpy(known[0].name, "w");
    known[0].value = 4;
    CHECK(fabs(reckoned("-(w + 2 * 3) ^ 2 / 4") + 25) < 1e-12 && fabs(reckoned("asin(sin(30)) - atan(1)") + 15) < 1e-12);
    CHECK(isnan(reckoned("w + v")) && isnan(reckoned("w w")) && isnan(reckoned("(w")));
    CHECK(fabs(quantity("50.8 mm", unit) - 2) < 1e-12 && strcmp(unit, "in") == 0 && fabs(quantity("12:12", unit) - 45) < 1e-12);
    CHECK(value_at("{\"a\":[{\"name\":\"x y\",\"side\":\"first\",\"b\":1},{\"name\":\"x y\",\"side\":\"second\",\"b\":2}]}", "a[x y@second].b", text, sizeof text));
    CHECK(strcmp(text, "2") == 0 && !value_at("{\"a\":[]}", "a[x].b", text, sizeof text));
}

int main(void)
{
    RUN(every_page_of_the_guide_gives_its_figures);
    RUN(a_wrong_figure_would_be_seen);
    return closing_line();
}
