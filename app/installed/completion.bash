# SPDX-License-Identifier: GPL-3.0-or-later
# Completion of staveline for bash. All that can be said is read from the program's own help, so it cannot fall behind: by
# how the help is laid out, not by its headings, which may be in any language.

_staveline() {
    local program=$1 word=$2 before=$3 help commands command='' book='' options choices each
    help=$("$program" --help 2>/dev/null)
    commands=$(sed -n 's/^  \([a-z]\+\)  .*/\1/p' <<<"$help" | tr '\n' ' ')
    for each in "${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
        [ -z "$command" ] && [[ " $commands" == *" $each "* ]] && command=$each
        [[ $each == *.cellar ]] && book=$each
    done
    [ -n "$command" ] && help+=$'\n'$("$program" "$command" --help 2>/dev/null)

    # "--units=us" comes as three words.
    [ "$word" = "=" ] && word='' && before="="
    [ "$before" = "=" ] && before=${COMP_WORDS[COMP_CWORD - (${#word} > 0 ? 2 : 1)]}
    choices=$(sed -n "s/^  \(.*,\)\?$before .*:{\([^}]*\)}.*/\2/p" <<<"$help" | tr ',' ' ')

    COMPREPLY=()
    if [[ $before == --* && -n $choices ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$choices" -- "$word")
    elif [[ $word == -* ]]; then
        options=$(sed -n 's/^  \(-[^ ]*\).*/\1/p' <<<"$help" | tr ',' '\n' | grep '^--')
        mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word" | sort -u)
    elif [ -z "$command" ]; then
        mapfile -t COMPREPLY < <(compgen -W "$commands" -- "$word")
    elif [ -z "$book" ]; then
        compopt -o filenames 2>/dev/null
        mapfile -t COMPREPLY < <(compgen -f -X '!*.cellar' -- "$word"; compgen -d -- "$word")
    fi
}
complete -o default -F _staveline staveline
