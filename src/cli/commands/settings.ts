// `rackside settings`: shows, sets and resets preferences, and says where files are.

import { cleanText } from '../../base/clean-text.ts';
import { LOOK_NAMES } from '../../base/colors.ts';
import { nearestName } from '../../base/nearest-name.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { Settings, SettingsStore } from '../../disk/settings.ts';
import { openSettings } from '../../disk/settings.ts';
import { ACTIONS } from '../../keys/actions.ts';
import { usableKeys, whyNotKey } from '../../keys/key-choices.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

const KEY_PREFIX = 'key.';

export const settingsCommand: CliCommand = {
	usage: 'settings [NAME [VALUE]]',
	about: [
		'Shows all preferences and where files are; with a name that one, with a value too sets it.',
		'Names: looks (dark; amber, dim for backstage; grey; none, words without colour), and key.ACTION,',
		'one for each action of the live screen.',
	],
	example: 'rackside settings key.memo n',
	options: { ...JSON_OPTION, reset: { words: 'set everything back' } },
	words: { least: 0, most: 2 },
	run: async (request, io) => {
		const places = placesOf(request, io);
		const store = await openSettings({ disk: realDisk, folder: places.settings });
		if (store.problem !== null) io.complain(`${cleanText(store.problem)}\n`);
		if (request.options.reset) return kept(store.reset(), io.complain);
		const [name, value] = request.words;
		const all = allSettings(store.values);
		if (name === undefined) {
			const files = { nights: places.nights, settings: store.path };
			if (request.options.json) io.write(`${JSON.stringify({ settings: all, files })}\n`);
			else {
				const lines = [
					...Object.entries(all),
					['nights in', files.nights],
					['settings in', files.settings],
				];
				io.write(lines.map(([key, text]) => `${cleanText(`${key}: ${text}`)}\n`).join(''));
			}
			return EXIT.fine;
		}
		if (!Object.hasOwn(all, name)) {
			const near = nearestName(name, Object.keys(all));
			const hint = near === null ? 'rackside settings lists all.' : `Did you mean ${near}?`;
			return tellProblems(
				[
					{
						code: 'unknown-setting',
						what: 'there is no such setting',
						found: cleanText(name),
						hint,
					},
				],
				io,
			);
		}
		if (value === undefined) {
			io.write(
				request.options.json ? `${JSON.stringify(all[name])}\n` : `${cleanText(all[name] ?? '')}\n`,
			);
			return EXIT.fine;
		}
		const change = changeOf(store, name, value);
		if ('why' in change) {
			io.complain(`${change.why}\n`);
			return EXIT.unusable;
		}
		if ('expected' in change) {
			return tellProblems(
				[
					{
						code: 'setting-value',
						what: `${name} cannot be this`,
						found: cleanText(value),
						expected: change.expected,
					},
				],
				io,
			);
		}
		return kept(store.change(change), io.complain);
	},
};

function kept(trouble: string | null, complain: (text: string) => void): number {
	if (trouble === null) return EXIT.fine;
	complain(`${cleanText(trouble)}\n`);
	return EXIT.unusable;
}

function allSettings(values: Settings): Record<string, string> {
	return {
		looks: values.looks,
		...Object.fromEntries(
			ACTIONS.map(({ id, keys }) => [`${KEY_PREFIX}${id}`, values.keys[id] ?? keys[0] ?? '']),
		),
	};
}

function changeOf(
	store: SettingsStore,
	name: string,
	value: string,
): Partial<Settings> | { readonly expected: string } | { readonly why: string } {
	if (name === 'looks') {
		const looks = LOOK_NAMES.find((one) => one === value.toLowerCase());
		return looks === undefined ? { expected: `one of ${LOOK_NAMES.join(', ')}` } : { looks };
	}
	const id = name.slice(KEY_PREFIX.length);
	const key = value.toLowerCase();
	const why = whyNotKey(id, key, usableKeys(store.values.keys).keys);
	return why === null ? { keys: { ...store.values.keys, [id]: key } } : { why };
}
