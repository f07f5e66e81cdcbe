// The pages beside the run sheet: a cue sheet for one board, the rack, the radio packs, the floor before a player.
// As plain text; `sheet-html.ts` draws them as pages.

import { cleanText } from '../base/clean-text.ts';
import { displayWidth } from '../base/display-width.ts';
import {
	atCue,
	intervalWords,
	NOBODY_IN_PARTICULAR,
	RACK,
	RADIO,
	SHEET,
	sayWords,
	spareFor,
} from '../words/paper.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';
import { sheetFacts } from './run-sheet.ts';
import type { Sheet, SheetPoint } from './sheet.ts';
import type { RackPlace } from './sheet-gear.ts';

/** Which page: the run sheet itself, or one beside it; `player` where it is one player's. */
export type SheetPage =
	| { readonly kind: 'run' | 'rack' | 'radio' }
	| { readonly kind: 'cues' | 'floor'; readonly player: string };

/** One player's board at one point of a song. */
export type BoardPoint = {
	readonly at: string;
	readonly presses: string;
	readonly whole: string;
	readonly say: string | null;
};

/** The points of a song at which this player's board is asked for anything. */
export function boardPoints(points: readonly SheetPoint[], player: string): readonly BoardPoint[] {
	return points.flatMap(({ at, say, boards }) =>
		boards
			.filter((board) => board.player === player)
			.map(({ presses, whole }) => ({ at: at ?? SHEET.atStart, presses, whole, say })),
	);
}

/** What a player has from a song on, where that changes: `4 Anchor drop D, CAPO ON 2`. */
export type FloorLine = {
	readonly kind: 'song' | 'interval' | 'encore';
	readonly position: number | null;
	readonly title: string;
	readonly has: string;
	readonly isStarter: boolean;
};

/** The list as a player reads it from the floor. */
export function floorLines({ show, rows }: Sheet, player: string): readonly FloorLine[] {
	return rows.flatMap((row): readonly FloorLine[] => {
		const plain = { position: null, has: '', isStarter: false };
		if (row.kind === 'interval') {
			return [{ ...plain, kind: 'interval', title: intervalWords(row.length) }];
		}
		const encore: readonly FloorLine[] = row.isEncoreBegin
			? [{ ...plain, kind: 'encore', title: SHEET.encore }]
			: [];
		const has = row.changes
			.filter((change) => change.player === player)
			.map(({ at, on, nothing, capo }) => {
				const thing =
					on === null ? [nothing] : on.isKept ? [on.slot, on.name] : [on.slot, on.name, on.tuning];
				const words = thing.filter((part) => part !== null).join(' ');
				return `${at === null ? '' : atCue(at)}${words}${capo === null ? '' : `, ${capo}`}`;
			})
			.join('; ');
		const { position, title } = row;
		const song = show.songs.find(({ id }) => row.key.startsWith(`${id} `));
		return [...encore, { kind: 'song', position, title, has, isStarter: song?.starts === player }];
	});
}

/** For whom an instrument is kept: `spare for Ash and Bo`, `Ash`. */
export function whoseWords({ isSpare, players }: RackPlace): string {
	if (isSpare) return spareFor(players);
	return players.length === 0 ? NOBODY_IN_PARTICULAR : players.join(', ');
}

/** A page as lines of at most 80 columns, the last one ended too. */
export function pageText(sheet: Sheet, page: SheetPage, version: string): string {
	const { title } = sheet.show;
	return [
		...wrapped(cleanText([title, ...sheetFacts(sheet.show)].join(', ')), PAPER_COLUMNS, ''),
		...wrapped(version, PAPER_COLUMNS, ''),
		'',
		...linesOf(sheet, page),
	]
		.map((line) => `${line.trimEnd()}\n`)
		.join('');
}

function linesOf(sheet: Sheet, page: SheetPage): readonly string[] {
	switch (page.kind) {
		case 'cues':
			return cueLines(sheet, page.player);
		case 'floor':
			return floorLines(sheet, page.player).flatMap(({ position, title, has, isStarter }) => {
				const start = isStarter ? `, ${SHEET.youStart}` : '';
				const words = `${title}${has === '' ? '' : `: ${has}`}${start}`;
				return hung(words, `${String(position ?? '').padStart(3)} `);
			});
		case 'rack':
			return sheet.rack.flatMap(rackLines);
		case 'radio':
			return radioLines(sheet);
		case 'run':
			throw new RangeError('the run sheet has a text of its own');
	}
}

function cueLines({ rows }: Sheet, player: string): readonly string[] {
	return rows.flatMap((row) => {
		if (row.kind === 'interval') return [intervalWords(row.length)];
		const points = boardPoints(row.points, player);
		return [
			...hung(row.title, `${String(row.position).padStart(3)} `),
			...points.flatMap(({ at, presses, whole, say }) => {
				const said = say === null ? '' : `  ${sayWords(say)}`;
				return hung(`${atCue(at)}${presses || SHEET.stays}  (${whole})${said}`, '      ');
			}),
		];
	});
}

function rackLines(place: RackPlace): readonly string[] {
	return hung(
		[`${place.name} ${place.tuning}`, ...placeWords(place)].join(', '),
		`${place.slot ?? '-'} `,
	);
}

/** What a place says of its instrument, beside slot, name and tuning. */
export function placeWords(place: RackPlace): readonly string[] {
	const goesIn = [
		...(place.case === null ? [] : [RACK.inCase(place.case)]),
		...(place.pack === null ? [] : [RACK.onPack(place.pack)]),
	];
	return [
		place.kind,
		whoseWords(place),
		...(place.strings === '' ? [] : [place.strings]),
		...(goesIn.length === 0 ? [] : [goesIn.join(', ')]),
	];
}

function radioLines({ radio }: Sheet): readonly string[] {
	return [
		...radio.worn.flatMap(({ who, pack, channel, song, instrument, isFirst }) =>
			hung(
				[
					`${who} ${RADIO.pack} ${pack}${channel === null ? '' : `, ${RADIO.channel} ${channel}`}`,
					RADIO.from(song, instrument),
					...(isFirst ? [] : [RADIO.tell]),
				].join(', '),
				'',
			),
		),
		'',
		...hung(RADIO.spares(spareNames(radio.spare)), ''),
		...hung(RADIO.told(radio.told), ''),
	];
}

/** `P6 (C6)` of each. */
export function spareNames(
	packs: readonly { readonly pack: string; readonly channel: string | null }[],
): readonly string[] {
	return packs.map(({ pack, channel }) => (channel === null ? pack : `${pack} (${channel})`));
}

function hung(text: string, mark: string): readonly string[] {
	const clean = cleanText(mark);
	const indent = ' '.repeat(displayWidth(clean) + 2);
	const lines = wrapped(cleanText(text), PAPER_COLUMNS - indent.length, '');
	return lines.map((line, at) => (at === 0 ? clean : indent) + line);
}
