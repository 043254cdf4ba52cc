/* Reads one value out of the library's JSON by its path, for the reference cases: `positions[2].length`, `positions.count`, `value` for a
 * document that is a single value. Only what the library writes is read: JSON without spaces, in UTF-8.
 */
#ifndef SW_JSON_AT_H
#define SW_JSON_AT_H

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Behind a text that begins here. */
static const char *json_after_text(const char *at)
{
    for (at++; *at && *at != '"'; at++)
        if (*at == '\\' && at[1]) at++;
    return *at ? at + 1 : at;
}

/* Behind a value that begins here. */
static const char *json_after(const char *at)
{
    int depth = 0;
    if (*at == '"') return json_after_text(at);
    while (*at) {
        if (*at == '"') {
            at = json_after_text(at);
            continue;
        }
        if (*at == '[' || *at == '{') depth++;
        if (*at == ']' || *at == '}') {
            if (depth == 0) return at;
            if (--depth == 0) return at + 1;
        }
        if (*at == ',' && depth == 0) return at;
        at++;
    }
    return at;
}

/* The value of a field of the object that begins here, or NULL. */
static const char *json_field(const char *at, const char *name, size_t len)
{
    if (*at != '{') return NULL;
    for (at++; *at == '"'; at += *at == ',') {
        const char *key = at + 1, *value = json_after_text(at);
        if (*value != ':') return NULL;
        value++;
        if ((size_t)(value - 2 - key) == len && strncmp(key, name, len) == 0) return value;
        at = json_after(value);
    }
    return NULL;
}

/* An element of the array that begins here, or NULL. */
static const char *json_element(const char *at, size_t index)
{
    if (*at != '[' || at[1] == ']') return NULL;
    for (at++; index > 0; index--) {
        at = json_after(at);
        if (*at != ',') return NULL;
        at++;
    }
    return at;
}

static size_t json_count(const char *at)
{
    size_t count = 0;
    while (json_element(at, count)) count++;
    return count;
}

/* JSON as the library writes it, out of JSON that a hand has laid out: without what is blank between its parts. */
static inline void json_without_blanks(char *json)
{
    char *to = json;
    while (*json) {
        if (*json == '"') {
            const char *end = json_after_text(json);
            while (json < end) *to++ = *json++;
        } else if (strchr(" \t\r\n", *json)) {
            json++;
        } else {
            *to++ = *json++;
        }
    }
    *to = '\0';
}

/* The value at a path from the one that begins here, as text. False for an object, an array, or a path that leads nowhere. */
static bool json_at(const char *at, const char *path, char *text, size_t size)
{
    size_t used = 0;
    if (strcmp(path, "value") == 0 && *at != '{') path = "";
    while (at && *path) {
        if (*path == '[') {
            char *end;
            unsigned long index = strtoul(path + 1, &end, 10);
            if (end == path + 1 || *end != ']') return false;
            at = json_element(at, index);
            path = end + 1;
        } else {
            size_t len;
            if (*path == '.') path++;
            len = strcspn(path, ".[");
            if (*at == '[' && strcmp(path, "count") == 0) return snprintf(text, size, "%lu", (unsigned long)json_count(at)) > 0;
            at = json_field(at, path, len);
            path += len;
        }
    }
    if (!at || *at == '[' || *at == '{' || size == 0) return false;
    if (*at == '"') {
        for (at++; *at && *at != '"' && used + 1 < size; at++) {
            if (*at == '\\' && at[1]) at++;
            text[used++] = *at;
        }
    } else {
        const char *end = json_after(at);
        while (at < end && used + 1 < size) text[used++] = *at++;
    }
    text[used] = '\0';
    return true;
}

#endif
