/* Edit distance with swaps, on short words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/words.h"

#include <string.h>

enum { LONGEST = 40, LEAST_PART = 5 };

static int least(int a, int b)
{
    return a < b ? a : b;
}

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static int distance(const char *a, size_t m, const char *b, size_t n)
{
    int rows[3][LONGEST + 1];
    int *two_up = rows[0];
    int *up = rows[1];
    int *now = rows[2];
    for (size_t j = 0; j <= n; j++) {
        up[j] = (int)j;
    }
    for (size_t i = 1; i <= m; i++) {
        now[0] = (int)i;
        for (size_t j = 1; j <= n; j++) {
            int changed = lower(a[i - 1]) != lower(b[j - 1]);
            now[j] = least(least(up[j] + 1, now[j - 1] + 1), up[j - 1] + changed);
            bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) {
                now[j] = least(now[j], two_up[j - 2] + 1);
            }
        }
        int *spare = two_up;
        two_up = up;
        up = now;
        now = spare;
    }
    return up[n];
}

const char *hw_words_nearest(const char *typed, const char *const *words, int count)
{
    size_t m = strlen(typed);
    const char *found = NULL;
    int best = LONGEST;
    for (int i = 0; i < count; i++) {
        size_t n = strlen(words[i]);
        if (m == 0 || m > LONGEST || n > LONGEST) {
            continue;
        }
        int most = (int)(n > m ? n : m) / 3;
        int d = distance(typed, m, words[i], n);
        if (d <= (most < 1 ? 1 : most) && d < (int)n && d < best) {
            best = d;
            found = words[i];
        }
    }
    /* Failing that, one that holds the whole of what was typed: `cardigan` of `straight-cardigan`.
     */
    for (int i = 0; i < count && found == NULL && m >= LEAST_PART; i++) {
        found = strstr(words[i], typed) != NULL ? words[i] : NULL;
    }
    return found;
}

int hw_words_cut(const char *text, int most)
{
    int len = (int)strcspn(text, "\r\n");
    if (len <= most) {
        return len;
    }
    /* Not inside a UTF-8 character: its later bytes begin with the bits 10. */
    while (most > 0 && ((unsigned char)text[most] & 0xC0) == 0x80) {
        most--;
    }
    return most;
}

int hw_words_letters(const char *text, size_t len)
{
    int letters = 0;
    for (size_t i = 0; i < len; i++) {
        letters += ((unsigned char)text[i] & 0xC0) != 0x80;
    }
    return letters;
}

bool hw_words_name_fits(const char *text, size_t len)
{
    return len <= HW_WORDS_MAX_NAME_BYTES && hw_words_letters(text, len) <= HW_WORDS_MAX_NAME;
}
