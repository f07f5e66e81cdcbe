// What each shell is told about completing rackside: to ask the program, which gives a line for each value, with a
// tab before what it is. The scripts know nothing else, so they hold for later versions too.

const BASH = `
_rackside() {
	local word words=() values=() line
	for word in "\${COMP_WORDS[@]:1:COMP_CWORD}"; do
		words+=("\${word//[\\\\\\"\\']/}")
	done
	while IFS= read -r line; do
		values+=("\${line%%$'\\t'*}")
	done < <("\${1/#\\~/$HOME}" completion --values -- "\${words[@]}" 2>/dev/null)
	COMPREPLY=("\${values[@]}")
	if [[ \${#values[@]} == 1 && \${values[0]} == */ ]]; then
		compopt -o nospace 2>/dev/null
	fi
}
complete -o filenames -F _rackside rackside
`;

const ZSH = `#compdef rackside
(( $+functions[compdef] )) || { autoload -Uz compinit && compinit; }
_rackside() {
	local line value text
	local -a values shown folders
	for line in "\${(@f)$(\${~words[1]} completion --values -- "\${(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
		[[ -n $line ]] || continue
		value=\${(q)\${line%%$'\\t'*}}
		value=\${value/#\\\\\\~/\\~}
		text=\${line#*$'\\t'}
		if [[ $value == */ ]]; then
			folders+=($value)
		else
			values+=($value)
			shown+=("$value\${text:+  $text}")
		fi
	done
	(( $#folders )) && compadd -Q -S '' -- $folders
	(( $#values )) && compadd -Q -l -d shown -- $values
}
compdef _rackside rackside
`;

const FISH = `
function __rackside_values
	set -l words (commandline -opc)
	set -l current (commandline -ct | string unescape)
	test -n "$current"; or set current (commandline -ct)
	eval (string escape -- $words[1]) completion --values -- (string escape -- $words[2..] "$current") 2>/dev/null
end
complete -c rackside -f -k -a '(__rackside_values)'
`;

/** The script of each shell. */
export const SHELL_SCRIPTS: Readonly<Record<string, string>> = {
	bash: BASH.trimStart(),
	zsh: ZSH,
	fish: FISH.trimStart(),
};

/** What `rackside completion` gives. */
export const COMPLETION_FORMS: readonly string[] = [...Object.keys(SHELL_SCRIPTS), 'man'];
