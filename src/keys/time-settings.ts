// A technician's own times in the settings view: what each is, whether it counts tonight, and the
// question for another one.

import {
	fileSeconds,
	OWN_TIMES,
	type OwnTime,
	ownTimesWith,
	readOwnTime,
} from '../showfile/own-times.ts';
import type { OwnTimes, Show } from '../showfile/show.ts';
import { ownTimeWords, TIME_WORDS, timeName, timeText, workOfTime } from '../words/own-times.ts';
import {
	backToBuiltIn,
	fileComesFirst,
	notATime,
	TIME_HINT,
	TIME_NOTES,
	timeNow,
	timeTitle,
	tonightUses,
} from '../words/settings.ts';
import type { Outcome, Prompt } from './key-context.ts';
import type { SettingRow } from './setting-row.ts';
import { textPrompt } from './text-field.ts';

/** A row for each piece of work. */
export function timeSettings(own: OwnTimes, show: Show): readonly SettingRow[] {
	return OWN_TIMES.map((time) => ({
		name: timeName(time),
		value: timeText(own[time.name] ?? time.usual),
		note: noteOf(time, own, show),
		open: (): Outcome => ({ kind: 'prompt', prompt: timePrompt(time) }),
	}));
}

/** Where tonight's time comes from, short enough for the narrowest screen. */
function noteOf(time: OwnTime, own: OwnTimes, show: Show): string {
	const file = fileWords(time, show);
	if (file !== null) return TIME_NOTES.file(file);
	const mine = own[time.name];
	const tonight = show.ownTimes?.[time.name];
	if (tonight !== mine) return TIME_NOTES.tonight(timeText(tonight ?? time.usual));
	return mine === undefined ? TIME_NOTES.builtIn : TIME_NOTES.own(timeText(time.usual));
}

/** What the show file says of it; null where it leaves every instrument to what is set here. */
function fileWords(time: OwnTime, show: Show): string | null {
	const said = fileSeconds(show, time);
	const given = said.filter((seconds) => seconds !== null);
	if (given.length === 0) return null;
	const [least, most] = [Math.min(...given), Math.max(...given)];
	const range =
		least === most ? timeText(least) : TIME_NOTES.range(timeText(least), timeText(most));
	return `${range}${given.length < said.length ? TIME_NOTES.some : time.isAdded ? TIME_NOTES.inAll : ''}`;
}

/** Asks for one's own time; nothing is kept that is none. */
function timePrompt(time: OwnTime): Prompt {
	const { name, usual, isAdded } = time;
	const words = workOfTime(time);
	return textPrompt({
		view: (text, { preferences, session, keyOf }) => {
			const mine = preferences.times[name];
			const file = fileWords(time, session.show);
			const tonight = session.show.ownTimes?.[name];
			return {
				title: timeTitle({
					words,
					isAdded,
					now: timeText(mine ?? usual),
					isOwn: mine !== undefined,
				}),
				lines: [
					TIME_HINT,
					...(file === null ? [] : [fileComesFirst(file)]),
					...(tonight === mine
						? []
						: [tonightUses(timeText(tonight ?? usual), keyOf('read-show'))]),
				],
				choices:
					mine !== undefined && text === ''
						? [{ key: 'delete', words: backToBuiltIn(timeText(usual)) }]
						: [],
			};
		},
		also: (key, text, { preferences }) =>
			(key === 'delete' || key === 'backspace') && text === '' && name in preferences.times
				? chosen(time, null, preferences.times)
				: null,
		enter: (text, { preferences }) => {
			const seconds = readOwnTime(text);
			return seconds === null
				? { kind: 'say', words: notATime(text.trim(), TIME_WORDS) }
				: chosen(time, seconds, preferences.times);
		},
	});
}

function chosen({ name }: OwnTime, seconds: number | null, own: OwnTimes): Outcome {
	const words = ownTimeWords(name, seconds);
	return {
		kind: 'prefer',
		changes: { times: ownTimesWith(own, name, seconds) },
		words: timeNow(words),
		command: { do: 'change-time', time: name, seconds },
	};
}
