#include "check.h"

static void the_header_and_the_library_are_of_one_release(void)
{
    CHECK(strcmp(sw_version(), SW_VERSION) == 0);
    CHECK(sw_abi_version() == SW_ABI_VERSION);
}

static void types_have_the_sizes_that_other_languages_rely_on(void)
{
    CHECK(sizeof(sw_length) == 8);
    CHECK(sizeof(sw_status) == 4);
    CHECK(sizeof(sw_angle) == 8);
    CHECK(sizeof(sw_pitch) == 32);
    CHECK(SW_OK == 0);
}

int main(void)
{
    RUN(the_header_and_the_library_are_of_one_release);
    RUN(types_have_the_sizes_that_other_languages_rely_on);
    return closing_line();
}
