# Completion of yardproof's words for bash.

_yardproof() {
	# bash breaks words at "=", which would split --report=FORMAT and FORMAT=PATH.
	local line="${COMP_LINE:0:COMP_POINT}" words word last offers offer before=""
	read -r -a words <<<"$line"
	[[ $line == *[[:space:]] ]] && words+=("")
	last="${words[${#words[@]} - 1]}"
	[[ $last == *=* && $COMP_WORDBREAKS == *=* ]] && before="${last%"${last##*=}"}"

	COMPREPLY=()
	offers=$(yardproof complete -- "${words[@]:1}" 2>/dev/null) || return 0
	while IFS=$'\t' read -r offer word; do
		case $offer in
		"") ;;
		.paths)
			compopt -o filenames 2>/dev/null
			while read -r offer; do
				COMPREPLY+=("$offer")
			done < <(compgen -f -- "${last##*=}")
			;;
		*)
			[[ $offer == *= ]] && compopt -o nospace 2>/dev/null
			COMPREPLY+=("${offer#"$before"}")
			;;
		esac
	done <<<"$offers"
}

complete -F _yardproof yardproof
