# Looks at C sources for what the compiler does not see: caps, banned calls, layers.
# SPDX-License-Identifier: GPL-3.0-or-later
# Run by tests/lint.sh as: awk -f lint.awk -v top=FOLDER/ FILES. One line for each violation.

function say(line, rule, words)
{
    printf "%s:%d: %s: %s\n", name, line, rule, words
}

# The line without comments, and with strings and characters emptied.
function stripped(text,    out, c, two)
{
    out = ""
    while (text != "") {
        two = substr(text, 1, 2)
        if (in_comment) {
            c = index(text, "*/")
            if (c == 0)
                return out
            in_comment = 0
            text = substr(text, c + 2)
        } else if (two == "/*") {
            in_comment = 1
            text = substr(text, 3)
        } else if (match(text, /^"([^"\\]|\\.)*"/)) {
            out = out "\"\""
            text = substr(text, RLENGTH + 1)
        } else if (match(text, /^'([^'\\]|\\.)*'/)) {
            out = out "' '"
            text = substr(text, RLENGTH + 1)
        } else {
            out = out substr(text, 1, 1)
            text = substr(text, 2)
        }
    }
    return out
}

# Parameters in the first pair of parentheses.
function parameters(text,    i, c, depth, count)
{
    count = 1
    for (i = index(text, "("); i > 0 && i <= length(text); i++) {
        c = substr(text, i, 1)
        depth += (c == "(") - (c == ")")
        if (c == "," && depth == 1)
            count++
        if (depth == 0)
            break
    }
    return count
}

# Follow braces at file scope: a head that ends in `{` after `)` begins a function.
function follow(code,    i, c)
{
    for (i = 1; i <= length(code); i++) {
        c = substr(code, i, 1)
        if (depth == 0 && c != "{" && c != ";" && c != "}")
            head = head c
        if (c == "{") {
            if (depth == 0) {
                is_function = head ~ /\)[ \t]*$/ && head !~ /=/
                opened = FNR
                if (is_function && parameters(head) > 5)
                    say(FNR, "parameters", parameters(head) " of them, at most 5")
            }
            depth++
        } else if (c == "}") {
            depth--
            if (depth == 0) {
                if (is_function && FNR - opened + 1 > 60)
                    say(opened, "function length", FNR - opened + 1 " lines, at most 60")
                head = is_function ? "" : "data "
                is_function = 0
            }
        } else if (c == ";" && depth == 0) {
            if (head ~ /\(/ && head !~ /=/ && parameters(head) > 5)
                say(FNR, "parameters", parameters(head) " of them, at most 5")
            head = ""
        }
    }
    head = head " "
}

# Whether a layer may include a header of ours or of a library.
function may_include(header,    from)
{
    if (header ~ /^(core|read|write|shell)\//) {
        from = header
        sub(/\/.*/, "", from)
        if (is_ground)
            return header ~ /^core\/(hw|status|err|mem|buf|num|units)[.]h$/
        return layer == "shell" || from == layer || (from == "core" && layer != "")
    }
    if (header ~ /^xlsxwriter/)
        return base == "book.c"
    if (header ~ /^(cairo|pango)/)
        return base == "page.c"
    if (header ~ /^gsl\//)
        return (layer == "core" && !is_ground) || layer == "shell"
    if (header == "yaml.h" || header == "expat.h")
        return layer == "read"
    if (header == "jansson.h")
        return layer == "write"
    if (layer == "shell")
        return 1
    if (header == "stdio.h")
        return base == "buf.c" || base == "num.c"
    return header ~ /^(assert|ctype|errno|float|inttypes|limits|math|stdarg|stdbool|stddef|stdint)[.]h$/ \
        || header ~ /^(stdlib|string)[.]h$/
}

function finish()
{
    if (name == "")
        return
    if (is_header && last >= 150)
        say(last, "header length", last " lines, at most 149")
    if (last > 600)
        say(last, "file length", last " lines, at most 600")
}

FNR == 1 {
    finish()
    name = substr(FILENAME, length(top) + 1)
    base = name
    sub(/.*\//, "", base)
    is_header = base ~ /[.]h$/
    in_src = name ~ /^src\//
    layer = ""
    if (in_src)
        layer = name ~ /^src\/[a-z]+\// ? substr(name, 5) : "shell"
    sub(/\/.*/, "", layer)
    is_ground = name ~ /^src\/core\/(hw|status|err|mem|buf|num|units)[.][ch]$/
    in_comment = depth = in_macro = is_function = licensed = 0
    head = ""
    if ($0 !~ /^\/\* .*[^ ]$/)
        say(1, "top comment", "the first line says what the file is")
}
FNR <= 3 && /^ \* SPDX-License-Identifier: GPL-3.0-or-later( \*\/)?$/ {
    licensed = 1
}
FNR == 3 && !licensed {
    say(2, "top comment", "the second line, or the third, is the licence")
}
{
    last = FNR
    if (index($0, "\t") > 0)
        say(FNR, "tab", "four spaces instead")
    plain = $0
    gsub(/[\200-\277]/, "", plain) # a character of several bytes counts once
    if (length(plain) > 100)
        say(FNR, "long line", length(plain) " characters, at most 100")
    code = stripped($0)
    if (index(code, "//") > 0)
        say(FNR, "line comment", "/* */ instead")
    if (code ~ /(^|[^A-Za-z0-9_])(strcpy|strcat|v?sprintf|ato[ilf]|strtok|[fs]?scanf|gets|alloca|setlocale) *\(/)
        say(FNR, "banned call", $0)
}
/^[ \t]*#[ \t]*include/ {
    header = $0
    sub(/^[ \t]*#[ \t]*include[ \t]*[<"]/, "", header)
    sub(/[>"].*/, "", header)
    if (in_src && !may_include(header))
        say(FNR, "layer", layer " may not include " header)
}
in_src && base != "num.c" && \
    code ~ /(^|[^A-Za-z0-9_])(floor|ceil|l?l?round|trunc|l?l?rint|nearbyint)f? *\(/ {
    say(FNR, "rounding", "a function of num.h instead")
}
in_src && base != "num.c" && match(code, /\((int|long|size_t|unsigned)\) */) {
    operand = substr(code, RSTART + RLENGTH)
    if (operand ~ /^[^;,]*([0-9][.][0-9]|_cm|_per_10cm|->number|[.]number|_percent|fabs|sqrt|pow *\()/ ||
        operand ~ /^\(?[^;,]*hw_(gauge|unit|rule)_[a-z]+ *\(/)
        say(FNR, "double cast", "a function of num.h instead")
}
{
    if (code ~ /^[ \t]*#/ || in_macro)
        in_macro = $0 ~ /\\$/
    else
        follow(code)
}
END { finish() }
