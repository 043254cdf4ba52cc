/* Reads a step out of a worksheet that the library wrote as JSON. */
#ifndef SW_JSON_STEP_H
#define SW_JSON_STEP_H

#include "json_at.h"

/* The step with this number of all the steps of the worksheet that begins here, those of its parts among them; what is left of the number in
 * `*number` where it has fewer. */
static const char *json_step(const char *sheet, size_t *number)
{
    const char *entries = sheet ? json_field(sheet, "entries", 7) : NULL, *entry;
    size_t i;
    for (i = 0; entries && (entry = json_element(entries, i)) != NULL; i++) {
        const char *step = json_field(entry, "step", 4), *part = json_field(entry, "part", 4);
        if (step && (*number)-- == 0) return step;
        if (part && (step = json_step(part, number)) != NULL) return step;
    }
    return NULL;
}

#endif
