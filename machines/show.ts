// The whole evening: before, in a song, between songs, interval, before the encore, over, packed.

import { setup } from 'xstate';
import type { Condition, Law } from './advance.ts';

/** `changeover`, `interval`, `encore` and `over` say what stands next once a song has ended. */
export type ShowPhase =
	| 'before'
	| 'song'
	| 'changeover'
	| 'interval'
	| 'encore'
	| 'over'
	| 'packed';

export type ShowState = Condition<ShowPhase, Record<string, never>>;

/** What stands next. */
export type Ahead = 'changeover' | 'interval' | 'encore' | 'over';

export type ShowEvent =
	| { readonly type: 'songBegan' }
	| { readonly type: 'songEnded'; readonly ahead: Ahead }
	/** Another song was made the next one. */
	| { readonly type: 'nextChosen'; readonly ahead: Ahead }
	| { readonly type: 'showEnded' };

const isAhead =
	(ahead: Ahead) =>
	({ event }: { event: ShowEvent }) =>
		'ahead' in event && event.ahead === ahead;

const table = setup({
	types: { events: {} as ShowEvent },
	guards: {
		isChangeover: isAhead('changeover'),
		isInterval: isAhead('interval'),
		isEncore: isAhead('encore'),
		isOver: isAhead('over'),
	},
});

const byWhatIsAhead = [
	{ guard: 'isChangeover', target: 'changeover' },
	{ guard: 'isInterval', target: 'interval' },
	{ guard: 'isEncore', target: 'encore' },
	{ guard: 'isOver', target: 'over' },
] as const;

const songBegan = 'song' as const;
const showEnded = 'packed' as const;

const machine = table.createMachine({
	id: 'show',
	initial: 'before',
	states: {
		before: { on: { songBegan, showEnded } },
		song: { on: { songBegan, songEnded: [...byWhatIsAhead] } },
		changeover: { on: { songBegan, nextChosen: [...byWhatIsAhead], showEnded } },
		// An interval lasts until a song begins, whichever that turns out to be.
		interval: { on: { songBegan, showEnded } },
		encore: { on: { songBegan, nextChosen: [...byWhatIsAhead], showEnded } },
		over: { on: { songBegan, nextChosen: [...byWhatIsAhead], showEnded } },
		packed: {},
	},
});

/** The law of the evening. */
export const showLaw: Law<ShowState['context'], ShowEvent> = {
	machine,
	asked: (_, event) => event,
	changes: {},
};
