/* Files as text, for tests that read documents: run from the repository's root. */
#ifndef SW_READ_FILE_H
#define SW_READ_FILE_H

#include <stdio.h>
#include <stdlib.h>

/* The file as text, ended by a NUL; NULL where it cannot be read. The caller frees it. */
static char *read_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    char *text = NULL;
    long size;
    if (!file) return NULL;
    if (fseek(file, 0, SEEK_END) == 0 && (size = ftell(file)) >= 0 && fseek(file, 0, SEEK_SET) == 0 && (text = malloc((size_t)size + 1)) != NULL)
        text[fread(text, 1, (size_t)size, file)] = '\0';
    fclose(file);
    return text;
}

#endif
