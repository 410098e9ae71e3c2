/* Finished measurements from body measurements, by a garment's rules and the project's ease.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/garment.h"

#include <assert.h>
#include <string.h>

#include "core/words.h"

/* The measurement that a term names, or NULL where nothing gives it. */
static const hw_measure *measure_of(
    const hw_term *term, const hw_sizes *body, const hw_sizes *finished)
{
    const hw_sizes *sizes = term->finished ? finished : body;
    int found = sizes == NULL ? -1 : hw_sizes_find(sizes, term->name);
    return found < 0 ? NULL : &sizes->measures[found];
}

/* Names that a term might have meant: of the body, or finished ones that stand above. */
typedef struct {
    const char *names[2 * HW_MAX_MEASURES];
    int count;
} known_names;

static void know_sizes(const hw_sizes *sizes, known_names *known)
{
    for (int i = 0; sizes != NULL && i < sizes->measure_count; i++) {
        if (known->count < 2 * HW_MAX_MEASURES) {
            known->names[known->count++] = sizes->measures[i].name;
        }
    }
}

static hw_status missing_term(const hw_term *term, const hw_sizes *finished, hw_err *err)
{
    known_names known = { .count = 0 };
    know_sizes(finished, &known);
    const char *near = hw_words_nearest(term->name, known.names, known.count);
    const char *whose = term->finished ? "finished" : "body's";
    if (term->finished && near != NULL && strcmp(near, term->name) != 0) {
        return hw_err_set(err, HW_ERR_MISSING,
            "a rule needs the finished `%s`, which nothing gives; did you mean `%s`?", term->name,
            near);
    }
    return hw_err_set(err, HW_ERR_MISSING,
        "a rule needs the %s `%s`, which nothing gives: give `%s` under %s", whose, term->name,
        term->name, term->finished ? "finished" : "body");
}

hw_status hw_rule_value(
    const hw_rule *rule, const hw_rule_place *place, double *out_cm, hw_mark *mark, hw_err *err)
{
    double sum_cm = rule->constant_cm;
    hw_mark weakest = HW_MARK_GIVEN;
    for (int i = 0; i < rule->count; i++) {
        const hw_term *term = &rule->terms[i];
        const hw_measure *measure = measure_of(term, place->body, place->finished);
        if (measure == NULL || measure->missing[place->size]) {
            return missing_term(term, place->finished, err);
        }
        sum_cm += term->factor * measure->values_cm[place->size];
        weakest = hw_mark_weaker(weakest, measure->marks[place->size]);
    }
    *out_cm = sum_cm;
    if (mark != NULL) {
        *mark = weakest;
    }
    return HW_OK;
}

static int find_finished(const hw_garment *garment, const char *name)
{
    for (int i = 0; i < garment->finished_count; i++) {
        if (strcmp(garment->finished[i].name, name) == 0) {
            return i;
        }
    }
    return -1;
}

static hw_status check_changes(const hw_garment_task *task, hw_err *err)
{
    for (int i = 0; i < task->change_count; i++) {
        const hw_ease_change *change = &task->changes[i];
        if (find_finished(task->garment, change->name) < 0) {
            hw_status status = hw_err_set(err, HW_ERR_UNKNOWN,
                "ease is set on `%s`, but the garment has no finished measurement of that name: "
                "correct the name, or leave the line out",
                change->name);
            return hw_err_place(err, status, change->line, 0);
        }
    }
    return HW_OK;
}

hw_ease hw_garment_ease(const hw_garment_task *task, const hw_finished *what)
{
    for (int i = 0; i < task->change_count; i++) {
        if (strcmp(task->changes[i].name, what->name) == 0) {
            return task->changes[i].ease;
        }
    }
    return what->ease;
}

/* Exactly this number as it was written; near it is not enough. */
static bool is(double x, double number)
{
    return x >= number && x <= number;
}

/* The one measurement that a rule passes on unchanged, or NULL. */
static const hw_measure *bare(
    const hw_rule *rule, hw_ease ease, const hw_sizes *body, const hw_sizes *finished)
{
    bool alone = rule->count == 1 && is(rule->terms[0].factor, 1) && is(rule->constant_cm, 0);
    if (!alone || !is(ease.cm, 0) || !is(ease.percent, 0)) {
        return NULL;
    }
    return measure_of(&rule->terms[0], body, finished);
}

static const char *near_name(
    const hw_garment_task *task, const hw_term *term, const hw_sizes *finished)
{
    known_names known = { .count = 0 };
    if (term->finished) {
        know_sizes(finished, &known);
    } else {
        know_sizes(task->body, &known);
        know_sizes(task->table, &known);
    }
    return hw_words_nearest(term->name, known.names, known.count);
}

/* Whether a name is another with the word `finished` behind it. */
static bool is_turned(const char *name, const char *other)
{
    static const char behind[] = " finished";
    size_t n = strlen(other);
    return strncmp(name, other, n) == 0 && strcmp(name + n, behind) == 0;
}

/* The finished measurement that a term of the body means, written without the word `finished` or
 * with it behind, or NULL. Without a table the body's is what is missing. */
static const char *meant_finished(
    const hw_garment_task *task, const hw_finished *what, const char *name)
{
    bool table = task->table != NULL && task->table->measure_count > 0;
    for (int i = 0; i < task->garment->finished_count; i++) {
        const char *other = task->garment->finished[i].name;
        bool whole = table && strcmp(other, name) == 0 && strcmp(what->name, name) != 0;
        if (whole || is_turned(name, other)) {
            return other;
        }
    }
    return NULL;
}

/* A finished measurement that the garment has, but not above the rule that uses it. */
static hw_status refuse_order(const hw_finished *what, const char *name, hw_err *err)
{
    if (strcmp(what->name, name) == 0) {
        return hw_err_set(err, HW_ERR_MISSING,
            "`%s` cannot follow from itself: name a measurement of the body or a finished one that "
            "stands above it",
            name);
    }
    return hw_err_set(err, HW_ERR_MISSING,
        "`%s` follows from the finished `%s`, which stands further down; a rule uses only those "
        "above it: write `%s` above `%s`, or give `%s` under finished",
        what->name, name, name, what->name, name);
}

/* What a rule names and nothing gives, with the name of what was to follow from it. */
static hw_status refuse_term(const hw_garment_task *task, const hw_finished *what,
    const hw_term *term, const hw_sizes *finished, hw_err *err)
{
    const char *whose = term->finished ? "finished" : "body's";
    if (term->finished && find_finished(task->garment, term->name) >= 0) {
        return refuse_order(what, term->name, err);
    }
    const char *meant = term->finished ? NULL : meant_finished(task, what, term->name);
    if (meant != NULL) {
        return hw_err_set(err, HW_ERR_MISSING,
            "`%s` follows from the body's `%s`, which nothing gives; did you mean `finished %s`?",
            what->name, term->name, meant);
    }
    const char *near = near_name(task, term, finished);
    if (near != NULL) {
        return hw_err_set(err, HW_ERR_MISSING,
            "`%s` follows from the %s `%s`, which nothing gives; did you mean `%s%s`?", what->name,
            whose, term->name, term->finished ? "finished " : "", near);
    }
    if (term->finished) {
        return hw_err_set(err, HW_ERR_MISSING,
            "`%s` follows from the finished `%s`, which nothing gives: give `%s` or `%s` under "
            "finished",
            what->name, term->name, term->name, what->name);
    }
    return hw_err_set(err, HW_ERR_MISSING,
        "`%s` follows from the body's `%s`, which nothing gives: give `%s` under finished, or "
        "`%s` under body",
        what->name, term->name, what->name, term->name);
}

/* Whether everything is known that a rule names. */
static hw_status check_terms(
    const hw_garment_task *task, const hw_finished *what, const hw_sizes *finished, hw_err *err)
{
    for (int i = 0; i < what->rule.count; i++) {
        const hw_term *term = &what->rule.terms[i];
        if (measure_of(term, task->body, finished) == NULL) {
            return refuse_term(task, what, term, finished, err);
        }
    }
    return HW_OK;
}

static hw_status fill_size(
    const hw_finished *what, hw_ease ease, const hw_rule_place *place, hw_measure *out, hw_err *err)
{
    double sum_cm = 0;
    hw_mark mark = HW_MARK_GIVEN;
    hw_status status = hw_rule_value(&what->rule, place, &sum_cm, &mark, err);
    if (status != HW_OK) {
        return status;
    }
    double value_cm = sum_cm + ease.cm + sum_cm * ease.percent / 100;
    if (!(value_cm > 0 && value_cm <= HW_MAX_CM)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "`%s` comes to %.1f cm in size %s: check its rule, the measurements and the ease, or "
            "give `%s` under finished",
            what->name, value_cm, place->finished->names[place->size], what->name);
    }
    const hw_measure *from = bare(&what->rule, ease, place->body, place->finished);
    out->values_cm[place->size] = value_cm;
    out->marks[place->size] = from != NULL ? mark : hw_mark_weaker(mark, HW_MARK_DERIVED);
    out->sources[place->size] = from != NULL ? from->sources[place->size] : "";
    out->missing[place->size] = false;
    return HW_OK;
}

static hw_status follow(const hw_garment_task *task, const hw_finished *what, hw_sizes *finished,
    hw_arena *arena, hw_err *err)
{
    hw_status status = check_terms(task, what, finished, err);
    if (status != HW_OK) {
        return hw_err_place_in_garment(err, status, what->rule.line, 0);
    }
    if (finished->measure_count >= HW_MAX_MEASURES) {
        return hw_err_set(err, HW_ERR_LIMIT,
            "there is no room for `%s`: a project can have %d finished measurements; leave out "
            "some that the garment does not use",
            what->name, HW_MAX_MEASURES);
    }
    hw_measure *measure = hw_sizes_add(finished, what->name, arena);
    if (measure == NULL) {
        return hw_err_set(err, HW_ERR_NOMEM, "no memory for `%s`", what->name);
    }
    hw_ease ease = hw_garment_ease(task, what);
    for (int size = 0; size < finished->count && status == HW_OK; size++) {
        hw_rule_place place = { .body = task->body, .finished = finished, .size = size };
        status = fill_size(what, ease, &place, measure, err);
    }
    return status == HW_OK ? HW_OK : hw_err_place_in_garment(err, status, what->rule.line, 0);
}

hw_status hw_garment_finish(
    const hw_garment_task *task, hw_sizes *finished, hw_arena *arena, hw_err *err)
{
    assert(task->body == NULL || task->body->count == finished->count);
    int given = finished->measure_count;
    hw_status status = check_changes(task, err);
    for (int i = 0; i < task->garment->finished_count && status == HW_OK; i++) {
        const hw_finished *what = &task->garment->finished[i];
        if (hw_sizes_find(finished, what->name) < 0) {
            status = follow(task, what, finished, arena, err);
        }
    }
    if (status != HW_OK) {
        finished->measure_count = given;
    }
    return status;
}

int hw_garment_seam_at(const hw_garment *garment, int piece, hw_side side)
{
    for (int i = 0; i < garment->seam_count; i++) {
        const hw_seam *seam = &garment->seams[i];
        for (int end = 0; end < 2; end++) {
            if (seam->piece[end] == piece && seam->side[end] == side) {
                return i;
            }
        }
    }
    return -1;
}
