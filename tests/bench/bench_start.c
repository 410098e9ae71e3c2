/* How long a plan takes, as a ratio to starting a process that does nothing: medians, in turn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <fcntl.h>
#include <spawn.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <time.h>

enum { ROUNDS = 51 }; /* odd: the median is one of them */

extern char **environ;

static double now_s(void)
{
    struct timespec now = { 0 };
    (void)clock_gettime(CLOCK_MONOTONIC, &now); /* cannot fail with this clock */
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* Run a command to its end, its words thrown away. */
static bool run_s(char **command, posix_spawn_file_actions_t *quiet, double *out_s)
{
    pid_t process = 0;
    int state = 0;
    double start_s = now_s();
    if (posix_spawn(&process, command[0], quiet, NULL, command, environ) != 0 ||
        waitpid(process, &state, 0) != process || !WIFEXITED(state) || WEXITSTATUS(state) != 0) {
        (void)fprintf(stderr, "%s: did not run to a good end\n", command[0]);
        return false;
    }
    *out_s = now_s() - start_s;
    return true;
}

static int rising(const void *a, const void *b)
{
    double x = *(const double *)a;
    double y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *values)
{
    qsort(values, ROUNDS, sizeof *values, rising);
    return values[ROUNDS / 2];
}

/* Usage: bench_start NAME COMMAND [WORD...] */
int main(int argc, char **argv)
{
    char nothing[] = "/bin/true";
    char *idle[] = { nothing, NULL };
    double idle_s[ROUNDS];
    double work_s[ROUNDS];
    if (argc < 3) {
        (void)fputs("usage: bench_start NAME COMMAND [WORD...]\n", stderr);
        return 2;
    }
    posix_spawn_file_actions_t quiet;
    if (posix_spawn_file_actions_init(&quiet) != 0 ||
        posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", O_WRONLY, 0) != 0) {
        return 4;
    }
    for (int i = 0; i < ROUNDS; i++) {
        if (!run_s(idle, &quiet, &idle_s[i]) || !run_s(argv + 2, &quiet, &work_s[i])) {
            return 1;
        }
    }
    (void)posix_spawn_file_actions_destroy(&quiet); /* the process ends here */
    double base_s = median(idle_s);
    printf("%s: %.1f times the start of a process that does nothing (median of %d)\n", argv[1],
        median(work_s) / base_s, ROUNDS);
    return 0;
}
