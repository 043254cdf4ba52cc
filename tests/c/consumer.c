/* What a user of the installed library writes: built by check_install.sh from the installed files alone. */
#include <seamwright.h>
#include <stdio.h>
#include <string.h>

int main(void)
{
    const char *text = "39\"";
    sw_length length = {0};
    sw_error *error = NULL;
    char shown[64];
    if (sw_length_parse(text, strlen(text), &length, &error) != SW_OK) {
        sw_error_text(error, shown, sizeof shown, NULL);
        sw_error_free(error);
        puts(shown);
        return 1;
    }
    if (sw_length_format(length, "mm", 2, shown, sizeof shown, NULL, NULL) != SW_OK) return 1;
    printf("%s %s\n", SW_VERSION, shown);
    return strcmp(sw_version(), SW_VERSION) != 0;
}
