// What is said for a program that can say nothing itself any more, as in src/cli/launch.sh.

export const STOPPED_UNEXPECTEDLY =
	'rackside stopped unexpectedly; an open night is saved up to its last key. If the screen looks wrong, type reset.';
