/* Expat behind three plain calls; stopped at the first failure.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/xml.h"

#include <expat.h>
#include <string.h>

#include "read/yaml.h"

/* Parts a name from its namespace; a line end cannot stand in either. */
#define PART '\n'

typedef struct {
    const hw_xml_seer *seer;
    XML_Parser parser;
    int depth;
    hw_status status;
} walk;

static const char *plain_name(const char *name)
{
    const char *part = strrchr(name, PART);
    return part != NULL ? part + 1 : name;
}

const char *hw_xml_attribute(const char **attributes, const char *name)
{
    for (const char **at = attributes; *at != NULL; at += 2) {
        if (strcmp(plain_name(*at), name) == 0) {
            return at[1];
        }
    }
    return NULL;
}

/* Bytes of the character at text, which the walker has found to be UTF-8. */
static size_t character(const char *text, size_t len)
{
    size_t n = 1;
    while (n < len && ((unsigned char)text[n] & 0xC0) == 0x80) {
        n++;
    }
    return n;
}

void hw_xml_plain(hw_buf *buf, const char *text, size_t len)
{
    if (hw_yaml_is_text(text, len)) {
        hw_buf_bytes(buf, text, len);
        return;
    }
    for (size_t at = 0, n = 0; at < len; at += n) {
        n = character(text + at, len - at);
        bool shown = hw_yaml_is_text(text + at, n);
        hw_buf_bytes(buf, shown ? text + at : " ", shown ? n : 1);
    }
}

/* Expat may still call once or twice after it was stopped. */
static void settle(walk *w, hw_status status)
{
    if (status != HW_OK && w->status == HW_OK) {
        w->status = status;
        (void)XML_StopParser(w->parser, XML_FALSE); /* fails only where it has stopped already */
    }
}

static void XMLCALL on_open(void *data, const XML_Char *name, const XML_Char **attributes)
{
    walk *w = data;
    w->depth++;
    if (w->depth > HW_XML_MOST_DEPTH) {
        settle(w, HW_ERR_LIMIT);
    }
    if (w->status == HW_OK) {
        settle(w, w->seer->open(w->seer->context, plain_name(name), attributes));
    }
}

static void XMLCALL on_close(void *data, const XML_Char *name)
{
    walk *w = data;
    w->depth--;
    if (w->status == HW_OK) {
        settle(w, w->seer->close(w->seer->context, plain_name(name)));
    }
}

static void XMLCALL on_text(void *data, const XML_Char *text, int len)
{
    walk *w = data;
    if (w->status == HW_OK) {
        settle(w, w->seer->text(w->seer->context, text, (size_t)len));
    }
}

/* No workbook declares a document type; what does may be made to swell. */
static void XMLCALL on_type(void *data, const XML_Char *name, const XML_Char *system_name,
    const XML_Char *public_name, int has_inside)
{
    (void)name;
    (void)system_name;
    (void)public_name;
    (void)has_inside;
    settle(data, HW_ERR_SYNTAX);
}

hw_status hw_xml_damaged(hw_err *err)
{
    return hw_err_set(err, HW_ERR_SYNTAX, "%s",
        "this workbook is damaged; open it in your spreadsheet program and save it again as .xlsx");
}

static hw_status explain(hw_status status, hw_err *err)
{
    if (status == HW_ERR_NOMEM) {
        return hw_err_set(err, status, "%s", "there is not enough memory to read this workbook");
    }
    if (status == HW_ERR_LIMIT) {
        return hw_err_set(err, status, "%s",
            "this workbook holds more than is read; keep only the sheet of measured pieces in it");
    }
    return status == HW_ERR_SYNTAX ? hw_xml_damaged(err) : status;
}

static hw_status run(walk *w, const char *text, size_t len)
{
    XML_SetUserData(w->parser, w);
    XML_SetElementHandler(w->parser, on_open, on_close);
    XML_SetCharacterDataHandler(w->parser, on_text);
    XML_SetStartDoctypeDeclHandler(w->parser, on_type);
    if (XML_Parse(w->parser, text, (int)len, XML_TRUE) == XML_STATUS_OK) {
        return HW_OK;
    }
    bool refused = XML_GetErrorCode(w->parser) == XML_ERROR_NO_MEMORY;
    return w->status != HW_OK ? w->status : refused ? HW_ERR_NOMEM : HW_ERR_SYNTAX;
}

hw_status hw_xml_read(const char *text, size_t len, const hw_xml_seer *seer, hw_err *err)
{
    if (len > HW_XML_MOST_BYTES) {
        return explain(HW_ERR_LIMIT, err);
    }
    walk w = { .seer = seer, .parser = XML_ParserCreateNS(NULL, PART) };
    if (w.parser == NULL) {
        return explain(HW_ERR_NOMEM, err);
    }
    hw_status status = run(&w, text, len);
    XML_ParserFree(w.parser);
    return explain(status, err);
}
