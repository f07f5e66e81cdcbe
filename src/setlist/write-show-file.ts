// A draft as the show file that a person would write: grouped, short things on one line, a blank line
// between songs, always in the same order. The YAML library writes it, so that no text can be read as another.

import {
	Document,
	isCollection,
	isScalar,
	isSeq,
	type Node,
	Pair,
	Scalar,
	YAMLMap,
	YAMLSeq,
} from 'yaml';
import { minutesSeconds } from '../base/duration.ts';
import { FORMAT } from '../showfile/format.ts';
import type {
	DraftCell,
	DraftInstrument,
	DraftItem,
	DraftPart,
	DraftPlayer,
	DraftSong,
	ShowDraft,
} from './show-draft.ts';
import {
	asWritten,
	blockMap,
	commentOf,
	entry,
	FORM,
	laidOut,
	listOf,
	onOneLine,
	pair,
	quoted,
	remark,
	remarkWithin,
	shortest,
	spaced,
	textOrNone,
	written,
} from './yaml-nodes.ts';

/** The whole text of the show file. Texts of the draft are cleaned and stand on one line each; its ids are written as they are. */
export function writeShowFile(draft: ShowDraft): string {
	const root = new YAMLMap();
	const add = (key: string, node: Node): Scalar => {
		const name = new Scalar(key);
		root.items.push(new Pair(name, node));
		// The first part stands apart from the format as all others do from what is above them.
		name.spaceBefore = root.items.length > 1;
		return name;
	};
	add('format', new Scalar(FORMAT));
	if (draft.include?.length) {
		const include = add('include', shortest(draft.include.map((file) => written(file))));
		include.spaceBefore = false;
	}
	add('show', showNode(draft));
	const nodes = partNodes(draft);
	const part = (key: DraftPart) => {
		// What is taken over from another file stands before what is new.
		const given = draft.further?.[key];
		const items = [...(isSeq(given) ? (given.items as Node[]) : []), ...nodes[key]];
		if (items.length === 0) return;
		const list = listOf(items);
		// A comment above the first entry is the list's own to the library.
		if (isSeq(given)) list.commentBefore = given.commentBefore ?? null;
		remark(add(key, list), draft.partRemarks?.[key]);
	};
	part('players');
	part('instruments');
	for (const [key, value] of Object.entries(draft.further ?? {})) {
		if (Object.hasOwn(nodes, key)) continue;
		const node = asWritten(value);
		for (const { at, text } of draft.furtherRemarks ?? []) {
			if (at[0] === key) remarkWithin(node, at.slice(1), text);
		}
		add(key, node);
	}
	part('songs');
	part('set');
	const document = new Document(root);
	document.commentBefore = commentOf(draft.remarks);
	return document.toString(FORM);
}

/** The entries of one part alone, each line behind `indent`: for a file that is added to. Empty where the draft has none. */
export function partEntries(draft: ShowDraft, part: DraftPart, indent: string): string {
	const nodes = partNodes(draft)[part];
	if (nodes.length === 0) return '';
	const lines = new Document(listOf(nodes)).toString(FORM).trimEnd().split('\n');
	const first = part === 'songs' ? [''] : [];
	return [...first, ...lines].map((line) => (line === '' ? '\n' : `${indent}${line}\n`)).join('');
}

function partNodes(draft: ShowDraft): Readonly<Record<DraftPart, readonly Node[]>> {
	return {
		players: draft.players.map(playerNode),
		instruments: instrumentNodes(draft),
		songs: spaced(draft.songs.map(songNode)),
		set: setNodes(draft.set),
	};
}

function showNode(draft: ShowDraft): Node {
	const { title, venue, date, start, curfew } = draft;
	const node = blockMap({ title, venue, date, start, curfew });
	for (const [key, value] of Object.entries(draft.furtherShow ?? {})) {
		node.items.push(new Pair(new Scalar(key), asWritten(value)));
	}
	for (const { key, value } of node.items) {
		const said = isScalar(key) ? draft.showRemarks?.[key.value as 'title'] : undefined;
		if (said !== undefined && isScalar(value)) value.comment = commentOf([said]);
	}
	return node;
}

function playerNode({ id, name, plays, further, remarks }: DraftPlayer): Node {
	return remark(entry({ id, name, plays }, further ?? {}), remarks);
}

/** Each on its line, or all of them one key a line as soon as one is too long for that. */
function instrumentNodes(draft: ShowDraft): readonly Node[] {
	const nodes = draft.instruments.map(instrumentNode);
	if (nodes.every((node) => isCollection(node) && node.flow)) return nodes;
	for (const node of nodes) if (isCollection(node)) node.flow = false;
	return nodes;
}

function instrumentNode(one: DraftInstrument): Node {
	const node = entry(
		{ id: one.id, name: one.name },
		one.further ?? {},
		one.slot === null ? [] : [['slot', quoted(one.slot)]],
		[
			['kind', new Scalar(one.kind)],
			...(one.for === null ? [] : [['for', shortest(one.for.map(written))] as const]),
			['tuning', written(one.tuning)],
		],
	);
	return remark(node, one.remarks);
}

function songNode(song: DraftSong): Node {
	const node = blockMap({ id: song.id, title: song.title });
	const put = (key: string, value: Node | null) => {
		if (value !== null) node.items.push(new Pair(new Scalar(key), value));
	};
	put('length', song.seconds === null ? null : quoted(lengthText(song.seconds)));
	put('tempo', song.tempo === null ? null : new Scalar(song.tempo));
	const hands = new YAMLMap();
	for (const [player, cell] of Object.entries(song.hands)) {
		hands.items.push(new Pair(written(player), cellNode(cell)));
	}
	put('hands', hands.items.length === 0 ? null : laidOut(hands));
	for (const [key, value] of Object.entries(song.further ?? {})) put(key, asWritten(value));
	put('starts', textOrNone(song.starts));
	put('ends', textOrNone(song.ends));
	put('notes', textOrNone(song.notes));
	return remark(node, song.remarks);
}

function cellNode(cell: DraftCell): Node {
	if (cell.kind === 'none') return new Scalar('none');
	const further = Object.entries(cell.further ?? {});
	const node = new YAMLMap();
	if (cell.kind === 'needs') {
		const needs = blockMap({ kind: cell.instrumentKind, sounds: cell.sounds });
		if (cell.features?.length) needs.items.push(pair('features', cell.features));
		if (cell.prefer) needs.items.push(pair('prefer', cell.prefer));
		node.items.push(new Pair(new Scalar('needs'), needs));
	} else {
		const { instrument, tuning, capo } = cell;
		if (tuning === null && capo === 0 && further.length === 0) return written(instrument);
		node.items.push(...blockMap({ instrument, tuning }).items);
		if (capo !== 0) node.items.push(pair('capo', capo));
	}
	node.items.push(...further.map(([key, value]) => pair(key, value)));
	return onOneLine(node);
}

function setNodes(set: readonly DraftItem[]): readonly Node[] {
	const nodes: Node[] = [];
	let encore: YAMLSeq | null = null;
	for (const item of set) {
		const node = itemNode(item);
		if (item.kind === 'interval' || !item.isEncore) {
			encore = null;
			nodes.push(node);
			continue;
		}
		if (encore === null) {
			encore = new YAMLSeq();
			const group = new YAMLMap();
			group.items.push(new Pair(new Scalar('encore'), encore));
			nodes.push(group);
		}
		encore.items.push(node);
	}
	return nodes;
}

function itemNode(item: DraftItem): Node {
	if (item.kind === 'interval') {
		return remark(blockMap({ interval: shortTime(item.seconds) }), item.remarks);
	}
	if (item.gapSeconds === null) return remark(written(item.song), item.remarks);
	return remark(
		onOneLine(blockMap({ song: item.song, gap: shortTime(item.gapSeconds) })),
		item.remarks,
	);
}

/** `4:05`; with parts of a second, plain seconds. */
function lengthText(seconds: number): string {
	return Number.isInteger(seconds) ? minutesSeconds(seconds) : `${seconds}s`;
}

/** `90s`, `20m`, `4m30s`. */
function shortTime(seconds: number): string {
	if (!Number.isInteger(seconds) || seconds < 120) return `${seconds}s`;
	const rest = seconds % 60;
	return `${Math.floor(seconds / 60)}m${rest === 0 ? '' : `${rest}s`}`;
}
