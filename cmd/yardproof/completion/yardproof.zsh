#compdef yardproof
# Completion of yardproof's words for zsh.

_yardproof() {
	local line last=${words[CURRENT]} paths
	local -a offers open
	while IFS= read -r line; do
		case $line in
		'') ;;
		.paths) paths=1 ;;
		*=) open+=("$line") ;;
		*$'\t'*) offers+=("${${line%%$'\t'*}//:/\\:}:${line#*$'\t'}") ;;
		*) offers+=("${line//:/\\:}") ;;
		esac
	done < <(yardproof complete -- "${(@Q)words[2,CURRENT]}" 2>/dev/null)

	(( $#offers )) && _describe 'yardproof' offers
	(( $#open )) && compadd -S '' -- $open
	if [[ -n $paths ]]; then
		[[ $last == *=* ]] && compset -P '*='
		_files
	fi
}

# Read with source it has to be made known; in a folder of $fpath it is called.
if [[ $funcstack[1] == _yardproof ]]; then
	_yardproof "$@"
else
	(( $+functions[compdef] )) || { autoload -Uz compinit && compinit }
	compdef _yardproof yardproof
fi
