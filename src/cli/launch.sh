#!/bin/sh
# Starts rackside, and puts the terminal right when the program died without doing so itself: after a
# KILL or a crash nothing else can. Apart from a terminal it only hands over.
here=$(dirname "$(readlink -f "$0")")

# A checkout brings its own Node; an installed program uses the one in PATH.
node=$here/../node_modules/.bin/node
[ -x "$node" ] || node=node
if ! command -v "$node" >/dev/null 2>&1; then
	echo 'rackside needs Node 22.2 or newer, and found no node in PATH; install Node and start it again.' >&2
	exit 2
fi

# Node loads no program from such a place, and says so in a way that helps nobody.
unloadable=
case $here in
*\\*) unloadable=1 ;;
*[!A-Za-z0-9/._@+~,=\ :-]*) printf '%s' "$here" | iconv -f UTF-8 -t UTF-8 >/dev/null 2>&1 || [ $? = 127 ] || unloadable=1 ;;
esac
if [ -n "$unloadable" ]; then
	name=$(printf '%s' "$here" | LC_ALL=C tr -c '[:print:]' '?')
	echo "rackside cannot be started from $name: Node loads no program from a folder with a backslash, or with a name that is not UTF-8, on its way. Move it to another folder and start it again." >&2
	exit 2
fi

# Node would let its space for young objects grow to 96 MB in the course of a night, or for one large
# plan; 24 do as well.
young=--max-semi-space-size=8

[ -t 0 ] && [ -t 1 ] && modes=$(stty -g 2>/dev/null) || exec "$node" $young "$here/rackside.js" "$@"

# The program says so when it has done all that it could and the disk has not answered: it cannot end while a
# sync hangs, and nobody has to wait for that. It gets a second to end by itself.
unanswered=
killed=
trap 'unanswered=1; (sleep 1; kill -KILL $child; kill -ALRM $$) 2>/dev/null & timer=$!' USR1
given_up=
trap '[ -n "$unanswered" ] && given_up=1' ALRM
# And so it does when it has left the screen and the terminal has its last words.
said=
trap 'said=1' USR2

exec 3<&0 # a background job of sh gets an empty stdin otherwise
RACKSIDE_LAUNCHER=$$ "$node" $young "$here/rackside.js" "$@" <&3 3<&- &
child=$!
for name in HUP INT QUIT TERM; do trap "kill -$name $child 2>/dev/null" $name; done
while :; do
	wait $child 2>/dev/null # the shell has a word of its own for what was killed
	code=$?
	[ -n "$given_up" ] && break
	kill -0 $child 2>/dev/null || break
done
if [ -n "$unanswered" ]; then
	kill $timer 2>/dev/null
	[ -n "$given_up" ] || [ $code = 137 ] && code=3 && killed=1
fi
trap - HUP INT QUIT TERM ALRM USR1 USR2

# Puts right what the program left. The settings first: a terminal that has stalled still takes those.
put_right() {
	stty "$modes" <&3
	[ -n "$said" ] && return
	# End of a synchronised frame; no bracketed paste, but wrapping; no mouse or focus reports; plain
	# text; the cursor shown; back from the other screen. Saving the cursor first (7) keeps it where it is
	# should that screen have been left already; not so in tmux, where the next line would be over the last.
	printf '\033[?2026l\033[?2004l\033[?7h\033[?1000l\033[?1002l\033[?1003l\033[?1006l\033[?1004l'
	printf '\033[0m\033[?25h\0337\033[?1049l'
	case $code in
	3 | 129 | 130 | 131 | 143) ;;
	*)
		echo 'rackside stopped unexpectedly; an open night is saved up to its last key. If the screen looks wrong, type reset.' >&2
		;;
	esac
}

# Above 128: a signal. It answers four of them, but its farewell is lost when the terminal had stalled;
# after any other it was killed, or crashed. One that is stalled still would hold up whoever writes to it,
# and so gets half a second.
if [ -n "$said" ] || [ $code -gt 128 ] || [ -n "$killed" ]; then
	sleep 0.5 </dev/null >/dev/null 2>&1 3<&- &
	patience=$!
	(put_right; kill $patience 2>/dev/null) &
	writer=$!
	wait $patience 2>/dev/null
	kill -KILL $writer 2>/dev/null
fi
exit $code
