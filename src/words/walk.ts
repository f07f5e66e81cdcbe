// What the first walk says: at each moment of a night one sentence and its keys, and once it is done what is to
// be seen.

/** Who leads, where the night says who asked for a step. */
export const LED_BY = 'rehearsal';

export const WALK = {
	press: (keys: readonly string[]): string => `press  ${keys.join('  ')}`,
	label: (number: number, of: number): string => `${number}/${of}`,
	/** By what name the report knows the night, which has no file. */
	night: 'walk',
	leaves: 'esc esc: leave the walk',
	goOn: 'enter: go on',
	left: 'You left the walk. rackside walk starts it again; nothing of it was kept.',
	done: 'This was the report of your walk. Nothing of the walk was kept.',
	next: 'rackside run SHOW opens your own show. rackside drill practises what goes wrong.',
} as const;

/** A moment's sentence, and what is said once it is done. */
export type WalkWords = { readonly asks: string; readonly done: string };

export const walkNext = (song: string): WalkWords => ({
	asks: `Everything is ready and the band walks on: start ${song}.`,
	done: 'The song is on and everybody has theirs. On top: the hand-over that comes.',
});

export const walkReady = (instrument: string): WalkWords => ({
	asks: `${instrument} is back on the rack and you just tuned it: mark it ready.`,
	done: 'It is off TO DO. Ready lasts a while, then the rack says RECHECK.',
});

export const walkBreak = (player: string, instrument: string): WalkWords => ({
	asks: `${player} breaks a string on ${instrument}: report it, hand the first backup.`,
	done: `${player} plays on. The silence is logged, the restring is in TO DO.`,
});

export const walkWrong = (player: string, has: string, planned: string): WalkWords => ({
	asks: `Look up: ${player} has ${has}, not ${planned}. Log what is in hands.`,
	done: 'Above the keys you read what is wrong with it. Put it right the same way.',
});

export const walkJump = (song: string): WalkWords => ({
	asks: `The singer calls ${song} next: jump to it.`,
	done: `${song} is next. What it skips was said while you typed.`,
});

export const walkTakeBack = (song: string): WalkWords => ({
	asks: `They change their minds, ${song} is not next after all: undo it.`,
	done: 'Every step can be undone, back to the start of the night.',
});

export const WALK_DARK: WalkWords = {
	asks: 'Blackout: make the screen dark, and the same key brings it back.',
	done: 'While it is dark only that key, space and backspace do anything.',
};

export const WALK_PASSED: WalkWords = {
	asks: '',
	done: 'Right now there is nothing in this night to show it on.',
};

export const WALK_REPORT: WalkWords = {
	asks: 'The last song is over: close the show, and read its report.',
	done: '',
};
