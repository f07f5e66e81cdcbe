// What makes a show file unusable: what is wrong, what stood there, what would do, and what to do about it.

import { cleanText } from '../base/clean-text.ts';
import type { Place, Problem } from '../base/problem.ts';
import { FORMAT } from '../showfile/format.ts';
import type {
	BadValue,
	FoundValue,
	IdList,
	KeyRefusal,
	Owner,
	ShowFault,
	ShowFaultSaid,
	SyntaxSlip,
	ValueShape,
} from '../showfile/show-fault.ts';
import { shownText } from '../showfile/shown-text.ts';
import type { SourcePath } from '../showfile/source-node.ts';
import { diskTrouble } from './disk.ts';
import { tuningExpectedWords, tuningHintWords } from './unread-tuning.ts';

/** The fault as it is told, in a terminal and in JSON. */
export function problemOf(fault: ShowFault): Problem {
	const { code, what, found, expected, hint } = told(fault);
	return {
		code: code ?? fault.code,
		what,
		...(fault.where === undefined ? {} : { where: fault.where }),
		...(found === undefined ? {} : { found }),
		...(expected === undefined ? {} : { expected }),
		...(hint === undefined ? {} : { hint }),
	};
}

/** `code`: where the one that is told is another than the fault's own. */
type Told = Partial<Pick<Problem, 'code' | 'found' | 'expected' | 'hint'>> & Pick<Problem, 'what'>;

const UTF8_HINT = 'Save it as UTF-8 in your editor.';
const GAUGE_WORDS = 'thousandths of an inch such as 10 or 46w, or "0.25 mm"; w means wound';
const TUNING_WORDS = 'a name such as drop D, or notes with their octaves';

function told(fault: ShowFaultSaid & { readonly where?: Place }): Told {
	switch (fault.code) {
		case 'no-file':
			return {
				what: 'there is no such file',
				// Where another file includes it, it stands nowhere else.
				...(fault.where?.line === undefined ? {} : { found: shownText(fault.path) }),
				hint: 'Check the name and the folder.',
			};
		case 'file-unreadable':
			return {
				what: `this file cannot be read: ${diskTrouble(fault.trouble)}`,
				found: shownText(fault.path),
				hint: 'Put that right, or name another file.',
			};
		case 'no-show':
			return {
				what: fault.isEmpty ? 'the file is empty' : 'the file holds no keys',
				expected: 'keys such as format, players, instruments, songs and set',
				hint: 'Look at the example shows, or start from a copy of one.',
			};
		case 'include-name':
			return {
				what: 'an included file is named without a folder',
				found: shownText(fault.name),
				hint: 'Keep the file beside this one and give its name only.',
			};
		case 'include-twice':
			return {
				what: fault.isItself ? 'a file cannot include itself' : 'this file is included twice',
				found: shownText(fault.name),
				hint: 'Take it out here.',
			};
		case 'include-many':
			return {
				what: 'too many files are included',
				expected: `at most ${fault.most}`,
				hint: 'Put several of them into one.',
			};
		case 'nested-include':
			return {
				what: 'an included file cannot include others',
				hint: 'Name all files in the file that is opened.',
			};
		case 'misplaced-show':
			return {
				what: 'show belongs in the main file, not in an included one',
				hint: 'Put it into the file that is opened.',
			};
		case 'in-two-files':
			return {
				what: `${shownText(fault.key)} is in two files`,
				found: `the other one in ${fault.otherFile}`,
				hint: 'Keep one of them.',
			};
		case 'too-large':
			return fault.bytes === null
				? {
						what: 'the show holds more than a night can carry with it',
						hint: 'Leave out songs and instruments that this show does not use.',
					}
				: {
						what: 'the file is too large',
						found: `${(Math.ceil(fault.bytes / 100_000) / 10).toFixed(1)} MB`,
						expected: 'at most 1 MB, included files counted in',
						hint: 'Check that it is the right file.',
					};
		case 'not-utf8':
			return fault.isUtf16
				? { what: 'the file is not UTF-8 text', found: 'UTF-16', hint: UTF8_HINT }
				: { what: 'some bytes here are not UTF-8 text', hint: UTF8_HINT };
		case 'not-text':
			return {
				what: 'this is not text, so it is not a show file',
				hint: 'Name a show file; rackside new FILE --songs LIST makes one from a table saved as CSV.',
			};
		case 'lone-return':
			return {
				what: 'a carriage return here ends no line',
				hint: 'Save the file with line ends LF or CRLF.',
			};
		case 'control-character': {
			const { character } = fault;
			return character === 0
				? { what: 'a control character is not allowed here', found: 'NUL', hint: UTF8_HINT }
				: {
						what: 'a control character is not allowed here',
						found: `U+${character.toString(16).toUpperCase().padStart(4, '0')}`,
						hint: 'Take it out.',
					};
		}
		case 'too-deep':
			return {
				what: 'lists and maps are nested too deep here',
				expected: `at most ${fault.most} levels`,
				hint: 'A show needs eight; check the brackets and the indentation.',
			};
		case 'too-many-values':
			return {
				what: 'the file holds more values than a show can',
				expected: `at most ${fault.most} words and signs`,
				hint: 'Leave out what this show does not use.',
			};
		case 'repeated-key':
			return {
				what: `the key ${cleanText(fault.key)} is here a second time`,
				...(fault.firstLine === null ? {} : { found: `the first in line ${fault.firstLine}` }),
				hint: 'Keep one of them.',
			};
		case 'no-colon':
			return {
				what: 'a key here has no colon and no value',
				found: shownText(fault.key),
				hint: 'A text that holds a comma goes in quotes.',
			};
		case 'forbidden-key':
			return {
				what: 'this key is not allowed in a show file',
				found: shownText(fault.key),
				hint: 'Choose another name.',
			};
		case 'alias':
			return {
				what: 'aliases are not allowed here',
				...foundOf(fault),
				hint: 'Write out what it stands for; a word that begins with * goes in quotes.',
			};
		case 'anchor':
			return {
				what: 'anchors are not allowed here',
				...foundOf(fault),
				hint: 'Take it out; a word that begins with & goes in quotes.',
			};
		case 'tag':
			return {
				what: 'tags are not allowed here',
				...foundOf(fault),
				hint: 'Take it out; a word that begins with ! goes in quotes.',
			};
		case 'merge-key':
			return {
				what: 'merge keys are not allowed here',
				found: '<<',
				hint: 'Write out what it would bring in.',
			};
		case 'odd-key':
			return {
				what: 'a key here is not a plain word',
				hint: 'Write the key as a word, followed by a colon and a space.',
			};
		case 'lone-surrogate':
			return {
				what: 'an escape here gives half a character',
				hint: 'Write the character itself in place of its escape.',
			};
		case 'yaml-directive':
			return fault.version === null
				? { what: 'this line begins with a % that means nothing here', hint: QUOTE_HINT }
				: {
						what: 'show files are YAML 1.2',
						found: `YAML ${fault.version}`,
						hint: 'Take the line that begins with % out.',
					};
		case 'many-documents':
			return {
				what: 'a second document begins here, and a show file is one',
				hint: 'Take out the line --- or keep what follows in a file of its own.',
			};
		case 'syntax':
			return slipWords(fault.slip);
		case 'missing-format':
			return {
				what: 'the show file does not say its format',
				hint: `Begin the file with the line "format: ${FORMAT}".`,
			};
		case 'unknown-format':
			return {
				what: 'this format is not known',
				found: fault.found === null ? 'no text' : shownText(fault.found),
				expected: FORMAT,
				hint: 'A later version of rackside may read it.',
			};
		case 'empty-set':
			return {
				what: 'the set has no song',
				hint: 'Add "set:" and the ids of the songs in their order. A file that another one includes is not opened itself.',
			};
		case 'more-problems':
			return { what: `there are ${fault.more} more problems`, hint: 'Correct these first.' };
		case 'renamed-key':
			return { what: `"${fault.key}" is now "${fault.now}"`, hint: 'Rename it.' };
		case 'unknown-key':
			return unknownKeyWords(fault);
		case 'missing-key':
			return {
				what: `${ownerWords(fault.owner)} has no ${fault.key}`,
				hint: `Add "${fault.key}:" and what it is.`,
			};
		case 'empty-value':
			return { what: `${labelOf(fault.at)} has no value`, hint: 'Give it one, or take it out.' };
		case 'wrong-shape':
			return {
				what: `${labelOf(fault.at)} is not what belongs here`,
				found: valueWords(fault.value),
				...(fault.wanted.length === 0
					? {}
					: { expected: fault.wanted.map((shape) => SHAPES[shape]).join(' or ') }),
			};
		case 'unknown-id':
			return {
				code: `unknown-${ONE_OF[fault.list]}`,
				what: `there is no ${ONE_OF[fault.list]} ${shownText(fault.id)}`,
				...(fault.known.length === 0
					? {}
					: { expected: fault.known.map((name) => shownText(name)).join(', ') }),
				hint: nearWords(fault.near, `Add it to ${fault.list}, or correct it here.`),
			};
		case 'duplicate-id':
			return duplicateWords(fault);
		case 'reserved-id':
			return {
				what: `${shownText(fault.id)} cannot be an id in ${fault.list}`,
				hint: 'The word means something else in a show file; choose another.',
			};
		case 'unknown-tuning':
			return unknownTuningWords(fault);
		case 'unknown-output':
			return {
				what: `${shownText(fault.supply)} has no output ${shownText(fault.id)}`,
				...(fault.known.length === 0
					? {}
					: { expected: fault.known.map((name) => shownText(name)).join(', ') }),
				hint: 'Add it to the outputs of that supply, or correct it here.',
			};
		case 'midi-unclear':
			return { what: 'this message is incomplete', ...MIDI_LACKS[fault.lacks] };
		case 'mass-key':
			return {
				code: 'bad-gauge',
				what: 'masses go by gauge',
				found: shownText(fault.key),
				expected: GAUGE_WORDS,
			};
		case 'unknown-string':
			return {
				what: 'offsets go by string number',
				found: cleanText(fault.key),
				expected: `a number from 1 to ${fault.most}`,
			};
		case 'instead-of-itself':
			return {
				what: `${cleanText(fault.id)} cannot be played instead of itself`,
				hint: 'Take it out, or say in which tuning or with which capo it is played then.',
			};
		case 'instead-twice':
			return {
				what: `${cleanText(fault.id)} is here a second time`,
				hint: 'Take one of them out.',
			};
		case 'string-count':
			return {
				what: `${cleanText(fault.id)} has ${fault.strings} strings, and as many gauges belong here`,
				found: String(fault.gauges),
				expected: `${fault.strings}, string 1 first`,
				hint: 'Correct the list, or leave out "strings".',
			};
		case 'duplicate-slot':
			return {
				what: `slot ${fault.key} is taken`,
				found: `${cleanText(fault.id)} where ${cleanText(fault.owner)} hangs`,
				hint: 'Give each instrument on the rack a slot of its own.',
			};
		case 'duplicate-gear':
			return {
				what: `${cleanText(fault.key)} is another instrument of this show`,
				found: `${cleanText(fault.id)} where ${cleanText(fault.owner)} is it`,
				hint: 'Give each instrument a gear id of its own, or leave it out.',
			};
		case 'interval-place':
			return {
				what: 'this interval is not between two songs of the set',
				hint: 'Take it out, or put it where the players leave the stage and come back.',
			};
		case 'empty-encore':
			return { what: 'this encore has no song', hint: 'List its songs, or take it out.' };
		case 'set-item-unclear':
			return {
				what: fault.isSeveral
					? 'this item of the set must be one of: song, interval, encore'
					: 'this item of the set is nothing that can be played',
				expected: 'a song, song: with gap:, interval: and how long, or encore: and its songs',
				...(fault.isGapAstray ? { hint: 'Write "gap" beside the song that it comes before.' } : {}),
			};
		case 'player-key': {
			const { what, hint } = KEY_REFUSALS[fault.refusal];
			return {
				what: `the key of ${cleanText(fault.id)} ${what}`,
				...(fault.wished === null ? {} : { found: fault.wished }),
				hint,
			};
		}
		case 'part-unclear':
			return 'key' in fault
				? {
						what: `"${fault.key}" does not go with "needs"`,
						expected: 'what is heard, as "sounds" within "needs"; the plan chooses tuning and capo',
						hint: 'Take it out, or name an instrument.',
					}
				: {
						what: `${cleanText(fault.player)} has ${fault.isBoth ? 'both an instrument and needs' : 'neither an instrument nor needs'} here`,
						expected:
							'instrument: and its id, or needs: with kind and sounds, or none for hands empty',
						hint: 'Leave the player out where it is as in the song above.',
					};
		default: {
			const { what, expected, hint } = badValueWords(fault);
			return {
				what: `${labelOf(fault.at)} ${what}`,
				found: valueWords(fault.value),
				...(expected === undefined ? {} : { expected }),
				...(hint === undefined ? {} : { hint }),
			};
		}
	}
}

function foundOf({ found }: { readonly found: string | null }): { readonly found?: string } {
	return found === null ? {} : { found: shownText(found) };
}

const INDENT_HINT = 'Indent by spaces, everything on one level by the same number.';
const QUOTE_HINT = 'Put the text in quotes.';

const SLIPS: Readonly<Record<Extract<SyntaxSlip, string>, Told>> = {
	escape: {
		what: 'this backslash begins nothing that is known',
		hint: 'Double the backslash, or use single quotes.',
	},
	indent: {
		what: 'the indentation does not fit here',
		hint: `${INDENT_HINT} Look for a bracket that was never closed.`,
	},
	'text-start': { what: 'a text cannot begin with this character', hint: QUOTE_HINT },
	nested: {
		what: 'nothing of this kind can be here',
		hint: `${INDENT_HINT} A text that holds a colon and a space goes in quotes.`,
	},
	'block-in-brackets': {
		what: 'a list or map in lines cannot be in brackets',
		hint: 'Use brackets throughout.',
	},
	'long-key': { what: 'this key is too long', hint: 'Check that a colon is not missing.' },
	'missing-sign': {
		what: 'a closing quote or bracket, a colon, a comma or a space is missing',
		hint: 'Look before this place for a quote or bracket left open, and at the indentation.',
	},
	'key-over-lines': {
		what: 'this begins like a key and runs over several lines',
		hint: 'Look for a missing colon, quote or bracket.',
	},
	tab: { what: 'there is a tab where spaces belong', hint: 'Indent by spaces.' },
	unexpected: {
		what: 'something here does not belong',
		hint: 'Look at what comes just before; a text with special characters goes in quotes.',
	},
};

function slipWords(slip: SyntaxSlip): Told {
	return typeof slip === 'string' ? SLIPS[slip] : { what: shownText(slip.other), hint: QUOTE_HINT };
}

type Of<Code extends ShowFaultSaid['code']> = Extract<ShowFaultSaid, { code: Code }>;

function nearWords(near: string | null, otherwise: string): string {
	return near === null ? otherwise : `Did you mean ${shownText(near)}?`;
}

function unknownKeyWords({ key, known, near, isInCue }: Of<'unknown-key'>): Told {
	return {
		what: isInCue
			? `${shownText(key)} is neither a player nor a key that is known here`
			: `${shownText(key)} is not a key that is known here`,
		expected: `one of ${known.map(shownText).join(', ')}`,
		hint: nearWords(
			near,
			isInCue ? 'Take it out, or add the player.' : 'Take it out, or put the words into "notes".',
		),
	};
}

function duplicateWords(fault: Of<'duplicate-id'> & { readonly where?: Place }): Told {
	const { list, id, first, where } = fault;
	if (first === null) {
		return {
			what: `the ${ENTRIES[list] ?? 'entry'} ${cleanText(id)} is ${list === 'boards' ? 'on this board' : 'here'} a second time`,
			hint: 'Give it an id of its own.',
		};
	}
	const line = `line ${first.line}`;
	return {
		what: `the id ${shownText(id)} is in ${list} a second time`,
		found: `the first in ${first.file === where?.file ? line : `${first.file}, ${line}`}`,
		hint: 'Give each an id of its own.',
	};
}

function unknownTuningWords(fault: Of<'unknown-tuning'>): Told {
	const found = shownText(fault.text);
	if ('unread' in fault) {
		const hint = tuningHintWords(fault.unread);
		return {
			what: `${labelOf(fault.at)} is not a tuning of this kind of instrument (${fault.kind})`,
			found,
			expected: tuningExpectedWords(fault.unread),
			...(hint === null ? {} : { hint }),
		};
	}
	return {
		what:
			fault.short === null
				? 'tuning is one that no kind of instrument has'
				: `${fault.short} is short for no tuning that any kind of instrument has`,
		found,
		expected: TUNING_WORDS,
	};
}

const KEY_REFUSALS: Readonly<Record<KeyRefusal, { readonly what: string; readonly hint: string }>> =
	{
		'is-slot': { what: 'is the slot of an instrument', hint: 'Choose a letter that no slot has.' },
		'is-taken': { what: "is another player's key", hint: 'Choose another letter.' },
		'none-left': {
			what: 'finds no free letter',
			hint: 'Give some instruments a digit as their slot.',
		},
	};

const ONE_OF: Readonly<Record<IdList, string>> = {
	techs: 'tech',
	players: 'player',
	instruments: 'instrument',
	songs: 'song',
	packs: 'pack',
	supplies: 'supply',
};

const MIDI_LACKS: Readonly<
	Record<(ShowFaultSaid & { code: 'midi-unclear' })['lacks'], Omit<Told, 'what'>>
> = {
	anything: {
		found: 'nothing to send',
		expected: 'program:, bank:, cc: with value:, or note: with velocity:',
	},
	value: { found: 'cc: without value:', hint: 'Add value: and a number from 0 to 127.' },
	cc: { found: 'value: without cc:', hint: 'Add cc: and the number of the controller.' },
	note: { found: 'velocity: without note:', hint: 'Add note: and its number.' },
};

/** What one entry of a list is called. */
const ENTRIES: Readonly<Record<string, string>> = {
	...ONE_OF,
	stock: 'stock item',
	offsets: 'offset',
	cues: 'cue',
	set: 'item of the set',
	encore: 'item of the encore',
	instead: 'entry of instead',
	boards: 'pedal',
	rigs: 'part',
};

/** `the instrument A4`, `this cue`, `the show file`. */
function ownerWords(owner: Owner): string {
	if (owner === 'file') return 'the show file';
	if ('key' in owner) return shownText(owner.key);
	const name = ENTRIES[owner.entryOf] ?? 'item';
	return owner.id === null ? `this ${name}` : `the ${name} ${shownText(owner.id)}`;
}

/** How a path's end is called in a sentence: its key, or which item of what. */
function labelOf(path: SourcePath): string {
	const last = path.at(-1);
	if (typeof last !== 'number') return shownText(String(last));
	return `item ${last + 1} of ${shownText(String(path.at(-2) ?? 'the list'))}`;
}

const SHAPES: Readonly<Record<ValueShape, string>> = {
	text: 'text',
	list: 'a list',
	keys: 'keys with values',
};

function valueWords(value: FoundValue): string {
	if (typeof value !== 'string') return shownText(value.text);
	return value === 'nothing' ? 'nothing' : SHAPES[value];
}

/** After the name of its key: `is not a length of time`. */
function badValueWords(bad: BadValue): Told {
	switch (bad.code) {
		case 'bad-text':
			return {
				what: bad.isEmpty ? 'is empty' : 'is too long',
				expected: `one to ${bad.most} characters`,
			};
		case 'bad-id':
			return bad.most === null
				? { what: 'is not an id', expected: 'the id of something in the show' }
				: {
						what: 'is not one that can be used',
						expected: `at most ${bad.most} letters, digits and - _ . without spaces, beginning with a letter or a digit`,
					};
		case 'bad-duration':
			return {
				what: 'is not a length of time that fits here',
				expected: `a time such as ${bad.example}, from ${bad.least} s to 24 h`,
			};
		case 'bad-number':
			return {
				what: 'is not a number that fits here',
				expected: `${bad.isWhole ? 'a whole number' : 'a number'} from ${bad.from} to ${bad.to}`,
			};
		case 'unknown-word':
			return {
				what: 'is not a word that is known here',
				expected: bad.known.join(', ').replace(/, ([^,]*)$/, ' or $1'),
				...(bad.near === null ? {} : { hint: `Did you mean ${bad.near}?` }),
			};
		case 'bad-yes-no':
			return { what: 'is neither yes nor no', expected: 'true, false, yes or no' };
		case 'bad-on-off':
			return {
				what: 'is neither on nor off',
				expected: 'on, off, or the settings that it is on with',
				...(bad.isYesOrNo ? { hint: 'Write "on" or "off".' } : {}),
			};
		case 'bad-date':
			return {
				what: 'is not a day of the calendar',
				expected: 'year, month and day, such as 2026-06-12',
			};
		case 'bad-day-time':
			return { what: 'is not a time of day', expected: 'hours and minutes, such as "20:30"' };
		case 'bad-gauge':
			return { what: 'is not a gauge', expected: GAUGE_WORDS };
		case 'bad-scale':
			return {
				what: 'is not a scale length',
				expected: 'inches or millimetres with their unit, such as 25.5 in or 648 mm',
			};
		case 'bad-length':
			return {
				what: 'is not a measure of the bench',
				expected: `millimetres such as 1.6, or 63 thou, or 4/64 in, at most ${bad.most} mm`,
			};
		case 'bad-shape':
			return {
				what: 'is not a chord shape',
				expected: 'one fret a string from the highest-numbered, such as "022100" or x32010',
			};
		case 'bad-ohms':
			return {
				what: 'is not a resistance',
				expected: 'ohms, such as 8, 500 k or 1 M',
			};
		case 'bad-capacity':
			return {
				what: 'is not what a battery holds',
				expected: 'a capacity such as 500 mAh or 2 Ah',
			};
		case 'bad-metres':
			return {
				what: 'does not say how long or how far',
				expected: 'a length such as 6 m, 20 ft or 30 cm',
			};
		case 'bad-milliseconds':
			return { what: 'is not a delay', expected: 'milliseconds such as 1.5 ms' };
		case 'bad-slot':
			return {
				what: 'is not a key that a place on the rack can have',
				expected: 'one character that is typed without shift, but not space, 0, - or =',
			};
		case 'bad-player-key':
			return { what: 'is not a key that a player can have', expected: 'one letter from a to z' };
		case 'bad-value':
			return { what: 'does not fit here' };
	}
}
