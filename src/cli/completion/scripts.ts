export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type ShellName = (typeof SHELLS)[number];

/** What a command shell is told so that Tab asks this program what may come next; where nothing may, it offers files. */
export const SCRIPTS: Readonly<Record<ShellName, string>> = {
  bash: `# shellbook for bash. Put this line into ~/.bashrc:  source <(shellbook completion bash)
_shellbook() {
  local IFS=$'\\n'
  COMPREPLY=($(compgen -W "$(shellbook --complete "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)" -- "\${COMP_WORDS[COMP_CWORD]}"))
}
complete -o default -F _shellbook shellbook`,
  zsh: `#compdef shellbook
# shellbook for zsh. Put this line into ~/.zshrc, after compinit:  source <(shellbook completion zsh)
_shellbook() {
  local -a found
  found=(\${(f)"$(shellbook --complete "\${(@)words[2,CURRENT]}" 2>/dev/null)"})
  if (( \${#found} )); then compadd -a found; else _files; fi
}
compdef _shellbook shellbook`,
  fish: `# shellbook for fish. Once:  shellbook completion fish > ~/.config/fish/completions/shellbook.fish
complete -c shellbook -f -a '(shellbook --complete (commandline -opc)[2..-1] (commandline -ct) 2>/dev/null)'
complete -c shellbook -F -n 'test (count (shellbook --complete (commandline -opc)[2..-1] "" 2>/dev/null)) -eq 0'`,
};
