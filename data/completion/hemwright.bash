# Completion of hemwright's commands, options, names and files in bash.
# SPDX-License-Identifier: GPL-3.0-or-later
# shellcheck shell=bash

# Words of COMPREPLY: those of the arguments behind the first that begin with the first.
_hemwright_words()
{
    local begun=$1
    shift
    mapfile -t COMPREPLY < <(compgen -W "$*" -- "$begun")
}

# Files whose names end in one of several ways, and folders on the way to them.
_hemwright_files()
{
    local begun=$1 ending
    shift
    compopt -o filenames 2>/dev/null
    mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(
        for ending; do
            compgen -f -X "!*.$ending" -- "$begun"
        done
        compgen -d -- "$begun"
    )
}

# The names that `hemwright list KIND` prints, or without KIND the kinds themselves.
_hemwright_named()
{
    local program=${COMP_WORDS[0]/#\~/$HOME}
    if [ $# -gt 0 ]; then
        "$program" list "$1" 2>/dev/null | sed -n 's/^  //p'
    else
        "$program" list 2>/dev/null | sed -n 's/^\([a-z-]*\):$/\1/p'
    fi
}

# One of several words parted by commas: what stands before the last comma stays.
_hemwright_some_of()
{
    local begun=$1 before=
    shift
    case $begun in
        *,*) before=${begun%,*}, ;;
    esac
    mapfile -t COMPREPLY < <(compgen -P "$before" -W "$*" -- "${begun##*,}")
    compopt -o nospace 2>/dev/null
}

# The value of an option; false where the option takes none that can be listed.
_hemwright_value()
{
    case $1 in
        --into | --motifs)
            compopt -o filenames 2>/dev/null
            mapfile -t COMPREPLY < <(compgen -d -- "$2")
            ;;
        --only) _hemwright_some_of "$2" xlsx csv json table ;;
        --show) _hemwright_some_of "$2" sizes hem bands outline shaping trims making yarn rows chart \
            card gauge tolerance alternatives notes basis costs measured all ;;
        --beside | --above | --below)
            _hemwright_words "$2" "$(_hemwright_named motifs)"
            _hemwright_files "$2" yaml pbm
            ;;
        --save) _hemwright_files "$2" yaml pbm svg ;;
        --table) _hemwright_words "$2" "$(_hemwright_named sizes)" ;;
        --fold) _hemwright_words "$2" none loose purl picot ;;
        --fabric) _hemwright_words "$2" main band facing ;;
        --width | --gauge | --per | --repeat | --gap | --edge | --bed | --depth | --band | \
            --rows | --band-rows | --card | --ease | --most | --shift | --raise | --plain-rows | \
            --catch | --size) ;;
        *) return 1 ;;
    esac
    return 0
}

_hemwright()
{
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
    local command=${COMP_WORDS[1]-} options=
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        _hemwright_words "$word" plan compare learn draw garment new stitches hem spread gauge dial \
            motif list keys help version --help --version
        return
    fi
    # Bash takes `--fold=picot` for three words.
    if [ "$word" = = ]; then
        word=
    elif [ "$before" = = ]; then
        before=${COMP_WORDS[COMP_CWORD - 2]}
    fi
    if _hemwright_value "$before" "$word"; then
        return
    fi
    case $command in
        plan) options='--into --only --show --size --replace' ;;
        draw) options='--into --size --replace' ;;
        garment) options='--table --size --save --replace' ;;
        compare) options='--motifs --ease --most' ;;
        new) options='--into --replace' ;;
        stitches) options='--width --gauge --per --repeat --gap --edge --bed' ;;
        hem) options='--per --depth --band --rows --band-rows --fold' ;;
        dial) options='--gauge --per --fabric' ;;
        motif) options='--gap --card --mirror --upside-down --shift --raise --beside --above --below \
            --plain-rows --catch --save --replace' ;;
        *) ;;
    esac
    case $word in
        -*)
            _hemwright_words "$word" "$options" --help
            return
            ;;
        *) ;;
    esac
    case $command in
        plan | compare | dial | draw) _hemwright_files "$word" yaml ;;
        garment)
            _hemwright_words "$word" "$(_hemwright_named garments)"
            _hemwright_files "$word" yaml
            ;;
        # The project, then what was measured.
        learn) _hemwright_files "$word" yaml xlsx csv ;;
        motif)
            _hemwright_words "$word" "$(_hemwright_named motifs)"
            _hemwright_files "$word" yaml pbm
            ;;
        list) _hemwright_words "$word" "$(_hemwright_named)" ;;
        *) ;;
    esac
}

complete -F _hemwright hemwright
