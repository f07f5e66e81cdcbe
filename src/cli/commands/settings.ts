// `rackside settings`: shows, sets and resets preferences, and says where files are.

import { cleanText } from '../../base/clean-text.ts';
import { COLOUR_SETS } from '../../base/colours.ts';
import type { DiskFault } from '../../base/disk-fault.ts';
import type { Problem } from '../../base/problem.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { Settings } from '../../disk/settings.ts';
import { defaultSettings, openSettings } from '../../disk/settings.ts';
import { ACTIONS } from '../../keys/actions.ts';
import { usableKeys, whyNotKey } from '../../keys/key-choices.ts';
import { OWN_TIMES, readOwnTime, usableTimes } from '../../showfile/own-times.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { TIME_WORDS, timeText, unusableTimeWords } from '../../words/own-times.ts';
import { NIGHTS_IN, SETTINGS_IN } from '../../words/program.ts';
import { NO_SETTING, oneOf, SETTINGS_LISTS, settingValue } from '../../words/requests.ts';
import { COLOUR_NAMES, COLOURS } from '../../words/settings.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { NO_PORT, portAsked } from '../live/midi-port.ts';
import { notAmong } from '../not-among.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

const KEY_PREFIX = 'key.';
const TIME_PREFIX = 'time.';
const MIDI = 'midi';

export const SETTING_NAMES: readonly string[] = Object.keys(allSettings(defaultSettings));

export const settingsCommand: CliCommand = {
	usage: 'settings [NAME [VALUE]]',
	about: [COMMAND_WORDS.settings.about],
	example: 'rackside settings time.capo 6s',
	options: { ...JSON_OPTION, reset: { words: COMMAND_WORDS.settings.options.reset } },
	words: { least: 0, most: 2 },
	run: async (request, io) => {
		const places = placesOf(request, io);
		const store = await openSettings({ disk: realDisk, folder: places.settings });
		const { keys, problems: ofKeys } = usableKeys(store.values.keys);
		const { times, problems: ofTimes } = usableTimes(store.values.times);
		const isResetting = request.options.reset === true;
		const [asked, value] = request.words;
		// What it was called before still names it.
		const name = asked === 'looks' ? COLOURS : asked;
		const troubles = [
			store.problem ? diskFaultWords(store.problem) : [],
			isResetting ? [] : [...ofKeys, ...ofTimes.map(unusableTimeWords)],
		].flat(2);
		io.complain(troubles.map((words) => `${cleanText(words)}\n`).join(''));
		const refused = (words: string): number => {
			io.complain(`${cleanText(words)}\n`);
			return EXIT.unusable;
		};
		const done = (fault: DiskFault | null): number =>
			fault === null ? EXIT.fine : refused(diskFaultWords(fault));
		if (name === undefined && isResetting) return done(store.reset());
		const settings: Settings = { ...store.values, keys, times };
		const all = allSettings(settings);
		if (name === undefined) {
			const files = { nights: places.nights, settings: store.path };
			if (request.options.json)
				io.write(`${JSON.stringify({ settings: { ...all, looks: settings.colours }, files })}\n`);
			else {
				const lines = [
					...Object.entries(all),
					[NIGHTS_IN, files.nights],
					[SETTINGS_IN, files.settings],
				];
				io.write(lines.map(([key, text]) => `${cleanText(`${key}: ${text}`)}\n`).join(''));
			}
			return EXIT.fine;
		}
		if (!Object.hasOwn(all, name)) return tellProblems([unknownSetting(name, all)], io);
		if (value === undefined && !isResetting) {
			io.write(
				request.options.json ? `${JSON.stringify(all[name])}\n` : `${cleanText(all[name] ?? '')}\n`,
			);
			return EXIT.fine;
		}
		if (isResetting) return done(store.change(withoutOne(settings, name)));
		const change = changeOf(settings, name, value ?? '');
		if (typeof change === 'string') return refused(change);
		if ('what' in change) return tellProblems([change], io);
		return done(store.change(change));
	},
};

function allSettings({ colours, keys, times, midi }: Settings): Record<string, string> {
	const own = usableTimes(times).times;
	return {
		[COLOURS]: COLOUR_NAMES[colours],
		[MIDI]: midi ?? NO_PORT,
		...Object.fromEntries(
			OWN_TIMES.map(({ name, usual }) => [`${TIME_PREFIX}${name}`, timeText(own[name] ?? usual)]),
		),
		...Object.fromEntries(
			ACTIONS.map(({ id, keys: [usual = ''] }) => [`${KEY_PREFIX}${id}`, keys[id] ?? usual]),
		),
	};
}

function unknownSetting(name: string, all: Readonly<Record<string, string>>): Problem {
	const unknown = { code: 'unknown-setting', what: NO_SETTING, found: name };
	return notAmong({ ...unknown, listedBy: SETTINGS_LISTS }, Object.keys(all));
}

/** What setting this one changes, or what is wrong with the value. */
function changeOf(
	{ keys, times }: Settings,
	name: string,
	value: string,
): Partial<Settings> | Problem | string {
	const refused = (expected: string): Problem => ({
		code: 'setting-value',
		what: settingValue(name),
		found: cleanText(value),
		expected,
	});
	if (name === COLOURS) {
		const asked = value.toLowerCase();
		const colours = COLOUR_SETS.find((one) => one === asked || COLOUR_NAMES[one] === asked);
		return colours === undefined ? refused(oneOf(Object.values(COLOUR_NAMES))) : { colours };
	}
	if (name === MIDI) return { midi: portAsked(value) };
	if (name.startsWith(TIME_PREFIX)) {
		const seconds = readOwnTime(value);
		return seconds === null
			? refused(TIME_WORDS)
			: { times: { ...times, [name.slice(TIME_PREFIX.length)]: seconds } };
	}
	const id = name.slice(KEY_PREFIX.length);
	const key = value.toLowerCase();
	return whyNotKey(id, key, keys) ?? { keys: { ...keys, [id]: key } };
}

/** What setting this one back changes. */
function withoutOne({ keys, times }: Settings, name: string): Partial<Settings> {
	if (name === COLOURS) return { colours: defaultSettings.colours };
	if (name === MIDI) return { midi: defaultSettings.midi };
	if (name.startsWith(TIME_PREFIX)) {
		const { [name.slice(TIME_PREFIX.length)]: _, ...others } = times;
		return { times: others };
	}
	const { [name.slice(KEY_PREFIX.length)]: _, ...others } = keys;
	return { keys: others };
}
