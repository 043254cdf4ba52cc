/* What every C test program needs: checks that go on after a failure, and one closing line that run.sh adds up. */
#ifndef SW_CHECK_H
#define SW_CHECK_H

#include "seamwright.h"
#include <stdio.h>
#include <string.h>

static int sw_tests_passed, sw_tests_failed, sw_test_faults;

#define CHECK(condition)                                                                   \
    do {                                                                                   \
        if (!(condition)) {                                                                \
            printf("%s:%d: %s does not hold: %s\n", __FILE__, __LINE__, __func__, #condition); \
            sw_test_faults++;                                                              \
        }                                                                                  \
    } while (0)

#define RUN(test)                                   \
    do {                                            \
        sw_test_faults = 0;                         \
        test();                                     \
        if (sw_test_faults > 0) sw_tests_failed++;  \
        else sw_tests_passed++;                     \
    } while (0)

/* A string literal, or any string, as pointer and length. */
#define TEXT(s) (s), strlen(s)

static int closing_line(void)
{
    printf("%d passed, %d failed\n", sw_tests_passed, sw_tests_failed);
    return sw_tests_failed > 0;
}

#endif
