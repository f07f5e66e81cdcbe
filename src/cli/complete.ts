// What can stand next on a command line: commands, options and values, from the records that also run and explain
// them. A value is told by the word that stands for it in the usage, such as SHOW.

import { readdirSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { resolve } from 'node:path';
import { cleanText } from '../base/clean-text.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { namedTuningsOf } from '../tuning/named-tunings.ts';
import { COLOUR_NAMES, COLOURS } from '../words/settings.ts';
import type { CliCommand, CommandList, Option } from './command.ts';
import { COMMON_OPTIONS } from './command.ts';
import { commandPlace } from './command-place.ts';
import { SETTING_NAMES } from './commands/settings.ts';
import type { Io } from './io.ts';
import { seenNights } from './night-places.ts';
import { openShow, readBytes } from './open-show.ts';
import { placesOf } from './places.ts';
import { COMPLETION_FORMS } from './shell-scripts.ts';

/** One that can be typed, and what it is in a few words; a folder ends with a slash. */
export type Candidate = { readonly value: string; readonly words: string };

/** What has been typed of a command, as far as a value depends on it. */
type Typed = {
	/** The words that belong to it, without options. */
	readonly words: readonly string[];
	/** What each of them stands for, in order: `SHOW`. */
	readonly places: readonly string[];
	readonly data: string | undefined;
	readonly io: Io;
};

/** All that can stand for the last of these words, which come after the program's name; it may be empty. */
export async function candidates(
	line: readonly string[],
	{ commands, start }: CommandList,
	io: Io,
): Promise<readonly Candidate[]> {
	// bash hands `--data=DIR` over in three words.
	const last = line.at(-1) ?? '';
	const before = line.slice(0, -1).filter((word) => word !== '=');
	const current = last === '=' ? '' : last;
	const place = commandPlace(before);
	const word = place === null ? '' : (before[place] ?? '');
	const listed = place === null ? start : Object.hasOwn(commands, word) && commands[word];
	if (!listed) return [];
	const command = await listed.load();
	const options = { ...command.options, ...COMMON_OPTIONS };
	const args = before.filter((_, index) => index !== place);
	const { words, given, open, data } = readArgs(args, options);
	const typed = { words, places: placesIn(command), data, io };
	const [, name, part] = /^--([^=]+)=(.*)$/s.exec(current) ?? [];
	if (name !== undefined && part !== undefined) {
		const values = await valuesOf(options[name], part, typed);
		return values.map(({ value, words: told }) => ({ value: `--${name}=${value}`, words: told }));
	}
	if (open) return valuesOf(open, current, typed);
	if (current.startsWith('-')) {
		const left = Object.entries(options).filter(([one]) => !given.has(one));
		return starting(
			current,
			left.map(([one, { words: told }]) => ({ value: `--${one}`, words: told })),
		);
	}
	if (place === null) {
		const all = Object.entries(commands).map(([one, { words: told }]) => ({
			value: one,
			words: told,
		}));
		return starting(current, all);
	}
	return valuesOf({ value: placeOf(typed) }, current, typed);
}

/** What each word after a command stands for: `settings [NAME [VALUE]]` has NAME and VALUE. */
function placesIn({ usage }: CliCommand): readonly string[] {
	return usage.replaceAll(/[[\]]/g, '').split(' ').slice(1);
}

/** What the next word stands for; the last of `tomorrow [NIGHT...]` for all that follow. */
function placeOf({ places, words }: Typed): string {
	const last = places.at(-1) ?? '';
	const place = places[words.length] ?? (last.endsWith(SEVERAL) ? last : '');
	return place.replace(SEVERAL, '');
}

const SEVERAL = '...';

/** `open` is the option that was typed last, where its value is still to come. */
function readArgs(args: readonly string[], options: Readonly<Record<string, Option>>) {
	const words: string[] = [];
	const given = new Set<string>();
	let open: Option | undefined;
	let data: string | undefined;
	let name = '';
	for (const arg of args) {
		if (open) {
			if (name === 'data') data = arg;
			open = undefined;
		} else if (arg.startsWith('--')) {
			name = arg.slice(2).split('=')[0] ?? '';
			given.add(name);
			const isWhole = arg.includes('=') || options[name]?.value === undefined;
			if (isWhole && name === 'data') data = arg.slice('--data='.length);
			open = isWhole ? undefined : options[name];
		} else words.push(arg);
	}
	return { words, given, open, data };
}

function starting(current: string, all: readonly Candidate[]): readonly Candidate[] {
	const typed = current.toLowerCase();
	return all.filter(({ value }) => value.toLowerCase().startsWith(typed));
}

async function valuesOf(
	option: Pick<Option, 'value' | 'oneOf'> | undefined,
	current: string,
	typed: Typed,
): Promise<readonly Candidate[]> {
	const stands = option?.value;
	if (option?.oneOf) return starting(current, plain(option.oneOf));
	if (stands === 'SHOW') return pathsFrom(current, typed.io, isShowFile);
	if (stands === 'FILE') return pathsFrom(current, typed.io, () => true);
	if (stands === 'DIR') return pathsFrom(current, typed.io, () => false);
	return starting(current, await namedValues(stands ?? '', typed));
}

async function namedValues(stands: string, typed: Typed): Promise<readonly Candidate[]> {
	const { words, io } = typed;
	switch (stands) {
		case 'INSTRUMENT':
		case 'SONG': {
			const show = await showIn(typed);
			if (!show) return [];
			return stands === 'SONG'
				? show.songs.map(({ id }) => ({ value: id, words: songTitle(show, id) }))
				: show.instruments.map(({ id }) => ({ value: id, words: shownInstrument(show, id) }));
		}
		case 'PLAYER':
			return ((await showIn(typed))?.players ?? []).map(({ id, name }) => ({
				value: id,
				words: name,
			}));
		case 'TUNING': {
			const instrument = (await showIn(typed))?.instruments.find(({ id }) => id === words[1]);
			return plain(instrument ? namedTuningsOf(instrument.kind).map(({ name }) => name) : []);
		}
		case 'NIGHT':
			return seenNights(placesOf(asRequest(typed), io), io).nights.map(({ id, header }) => ({
				value: id,
				words: header?.title ?? '',
			}));
		case 'NAME':
			return plain(SETTING_NAMES);
		case 'VALUE':
			return plain(words[0] === COLOURS ? Object.values(COLOUR_NAMES) : []);
		case 'SHELL':
			return plain(COMPLETION_FORMS);
		default:
			return [];
	}
}

function plain(values: readonly string[]): readonly Candidate[] {
	return values.map((value) => ({ value, words: '' }));
}

function asRequest({ words, data }: Typed) {
	return { words, options: data === undefined ? {} : { data: fromHome(data) } };
}

/** The show that this line names, if it can be read. */
async function showIn(typed: Typed): Promise<Show | null> {
	const file = typed.words[typed.places.indexOf('SHOW')];
	if (file === undefined) return null;
	return (await openShow(fromHome(file), asRequest(typed), typed.io)).show;
}

/** A shell leaves the sign for home alone while a word is being typed. */
function fromHome(path: string): string {
	return path.startsWith('~/') ? homedir() + path.slice(1) : path;
}

/** Folders, and the files that are wanted, by the path as it is typed. */
function pathsFrom(
	current: string,
	io: Io,
	isWanted: (path: string) => boolean,
): readonly Candidate[] {
	const folder = current.slice(0, current.lastIndexOf('/') + 1);
	const begun = current.slice(folder.length);
	const where = resolve(io.cwd, fromHome(folder));
	return namesIn(where)
		.filter((name) => name.startsWith(begun) && (begun.startsWith('.') || !name.startsWith('.')))
		.flatMap((name) => {
			const path = resolve(where, name);
			if (isFolder(path)) return [{ value: `${folder}${name}/`, words: '' }];
			return isWanted(path) ? [{ value: folder + name, words: '' }] : [];
		});
}

function namesIn(folder: string): readonly string[] {
	try {
		// A name with a line end in it would be two for the shell.
		return readdirSync(folder)
			.filter((name) => name === cleanText(name))
			.sort();
	} catch {
		return [];
	}
}

function isFolder(path: string): boolean {
	return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

const SHOW_NAME = /\.ya?ml$/i;
const SHOW_FORMAT = /^["']?format["']?:\s*["']?rackside\//m;
/** What is only included has neither an order nor includes. */
const SHOW_ORDER = /^["']?(set|include)["']?:/m;

/** Whether it is a show by its first looks: reading each would take too long for a key press. */
function isShowFile(path: string): boolean {
	if (!SHOW_NAME.test(path)) return false;
	const text = Buffer.from(readBytes(path) ?? []).toString('utf8');
	return SHOW_FORMAT.test(text) && SHOW_ORDER.test(text);
}
