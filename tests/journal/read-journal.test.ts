// What of a night's file can still be read when it was cut, flipped, filled, spliced or shuffled.

import { readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seedOf } from '../../src/journal/line.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import {
	headerLine,
	nightName,
	recordLine,
	recordsOf,
	runs,
	sampleHeader,
	sampleJournal,
	sampleRecord,
} from './sample-journal.ts';

const count = 12;
const whole = sampleJournal(count);
const records = Array.from({ length: count }, (_, index) => sampleRecord(index + 1));
const newlines = [...whole.keys()].filter((index) => whole[index] === 0x0a);

describe('a file in good order', () => {
	test('gives its header and every record', () => {
		const read = readJournal(whole);
		expect(read.header?.header).toEqual(sampleHeader());
		expect(recordsOf(read)).toEqual(records);
		expect(read.lines).toHaveLength(count);
		expect(read).toMatchObject({
			id: nightName,
			torn: null,
			quarantined: null,
			damaged: [],
			foreign: [],
			duplicates: 0,
			isUnterminated: false,
			isNewer: false,
			isOlder: false,
		});
	});

	test('has lines of eight hex digits, a space and JSON, with the CRC-32 that zlib computes', () => {
		const lines = whole.toString('utf8').trimEnd().split('\n');
		expect(lines).toHaveLength(count + 2);
		for (const [index, line] of lines.entries()) {
			const [, sum, body = ''] = /^([0-9a-f]{8}) (\{.*\})$/.exec(line) ?? [];
			const seed = index < 2 ? 0 : crc32(nightName);
			expect(Number.parseInt(sum ?? '', 16)).toBe(crc32(body, seed));
			expect(JSON.parse(body)).toHaveProperty('v', 2);
		}
	});

	test('the checksum is the CRC-32 of everybody else', () => {
		// Check value of CRC-32/ISO-HDLC for "123456789" in the catalogue of parametrised CRCs: cbf43926.
		expect(crc32('123456789').toString(16)).toBe('cbf43926');
	});
});

describe('cut at every byte', () => {
	test('exactly the whole records remain, and the rest is known as cut off', () => {
		for (let length = 0; length <= whole.length; length += 1) {
			const read = readJournal(whole.subarray(0, length), nightName);
			const lines = newlines.filter((index) => index < length).length;
			expect(recordsOf(read)).toEqual(records.slice(0, Math.max(0, lines - 2)));
			expect(read.header === null).toBe(lines === 0);
			const end = lines === 0 ? 0 : (newlines[lines - 1] ?? 0) + 1;
			expect(read.torn).toEqual(end === length ? null : { start: end, end: length });
			expect(read.quarantined).toBeNull();
			expect(read.damaged).toEqual([]);
		}
	});

	test('with zeros after the cut, as file systems leave them, it is the same', () => {
		for (let zeros = 1; zeros <= 8192; zeros *= 2) {
			for (let length = whole.length - 300; length <= whole.length; length += 1) {
				const bytes = Buffer.concat([whole.subarray(0, length), Buffer.alloc(zeros)]);
				const read = readJournal(bytes);
				const lines = newlines.filter((index) => index < length).length;
				expect(recordsOf(read)).toEqual(records.slice(0, lines - 2));
				expect(read.torn?.end).toBe(bytes.length);
				expect(read.quarantined).toBeNull();
				expect(read.damaged).toEqual([]);
			}
		}
	});
});

describe('one flipped bit', () => {
	// Every bit of every byte when asked for, else a seventh of them, all bits in turn.
	const step = process.env.RACKSIDE_ALL_FLIPS ? 1 : 7;

	test('is always noticed, and at most the record that it is in is lost', () => {
		for (let bit = 0; bit < whole.length * 8; bit += step) {
			const at = bit >> 3;
			const bytes = Buffer.from(whole);
			bytes[at] = (bytes[at] ?? 0) ^ (1 << (bit & 7));
			const read = readJournal(bytes, nightName);
			const line = newlines.filter((index) => index < at).length;
			const seqs = recordsOf(read).map((record) => record.s);
			const lost = records.map((record) => record.s).filter((seq) => !seqs.includes(seq));
			expect(recordsOf(read)).toEqual(records.filter((record) => seqs.includes(record.s)));
			expect(lost.length === 0 || (lost.length === 1 && lost[0] === line - 1)).toBe(true);
			expect(read.header?.header).toEqual(sampleHeader());
			const isNoticed = read.damaged.length > 0 || read.quarantined !== null || read.torn !== null;
			expect(isNoticed).toBe(true);
		}
	});

	test('in the last record it is set apart with a warning, since it may have been shown as saved', () => {
		const start = (newlines[count] ?? 0) + 1;
		for (let at = start; at < whole.length - 1; at += 1) {
			const bytes = Buffer.from(whole);
			bytes[at] = (bytes[at] ?? 0) ^ 0x01;
			const read = readJournal(bytes);
			expect(recordsOf(read)).toEqual(records.slice(0, -1));
			expect(read.quarantined).toEqual({ start, end: whole.length - 1, lost: 1 });
			expect(read.torn).toBeNull();
		}
	});

	test('in the newline between two records neither is lost', () => {
		for (const at of newlines.slice(0, -1)) {
			const bytes = Buffer.from(whole);
			bytes[at] = 0x0b;
			const read = readJournal(bytes);
			expect(recordsOf(read)).toEqual(records);
			expect(read.damaged).toMatchObject([{ lost: 0 }]);
		}
	});

	test('in the last newline the record stays, and the file wants a newline before it goes on', () => {
		const bytes = Buffer.from(whole);
		bytes[whole.length - 1] = 0x0b;
		const read = readJournal(bytes);
		expect(recordsOf(read)).toEqual(records);
		const start = (newlines.at(-2) ?? 0) + 1;
		const damaged = [{ start, end: whole.length, lost: 0 }];
		expect(read).toMatchObject({ torn: null, isUnterminated: true, damaged });
		const goneOn = Buffer.concat([bytes, Buffer.from('\n'), recordLine(sampleRecord(count + 1))]);
		expect(recordsOf(readJournal(goneOn))).toEqual([...records, sampleRecord(count + 1)]);
	});

	test('a header lost in both its copies leaves the records readable by the name of the file', () => {
		const bytes = Buffer.from(whole);
		bytes[40] = 0x21;
		bytes[(newlines[0] ?? 0) + 40] = 0x21;
		const read = readJournal(bytes, nightName);
		expect(read.header).toBeNull();
		expect(recordsOf(read)).toEqual(records);
		// Without the name nothing can be believed.
		expect(recordsOf(readJournal(bytes))).toEqual([]);
	});
});

/** Where a line begins and ends, its newline left out: 0 and 1 are the header, record n is line n + 1. */
const rangeOf = (line: number) => ({
	start: line === 0 ? 0 : (newlines[line - 1] ?? 0) + 1,
	end: newlines[line] ?? 0,
});

/** The file with a byte of each of these lines spoilt. */
function spoilt(...lines: readonly number[]): Buffer {
	const bytes = Buffer.from(whole);
	for (const line of lines) {
		const at = rangeOf(line).end - 20;
		bytes[at] = (bytes[at] ?? 0) ^ 0x01;
	}
	return bytes;
}

/** The file with these bytes put in before a line. */
function withBefore(line: number, put: string | Uint8Array): Buffer {
	const { start } = rangeOf(line);
	return Buffer.concat([whole.subarray(0, start), Buffer.from(put), whole.subarray(start)]);
}

describe('what is said of damage: where it is, and how many records it seems to have been', () => {
	const none = { damaged: [], quarantined: null, torn: null };
	const last = count + 1;

	test.each([
		['one record', spoilt(5), { ...none, damaged: [{ ...rangeOf(5), lost: 1 }] }],
		[
			'two that follow each other are one piece',
			spoilt(5, 6),
			{ ...none, damaged: [{ start: rangeOf(5).start, end: rangeOf(6).end, lost: 2 }] },
		],
		[
			'two apart are two',
			spoilt(5, 8),
			{ ...none, damaged: [5, 8].map((line) => ({ ...rangeOf(line), lost: 1 })) },
		],
		[
			'the last three, which nothing good follows',
			spoilt(last - 2, last - 1, last),
			{
				...none,
				quarantined: { start: rangeOf(last - 2).start, end: rangeOf(last).end, lost: 3 },
			},
		],
		[
			'the last and one before',
			spoilt(5, last),
			{
				...none,
				damaged: [{ ...rangeOf(5), lost: 1 }],
				quarantined: { ...rangeOf(last), lost: 1 },
			},
		],
		['a header is no record', spoilt(1), { ...none, damaged: [{ ...rangeOf(1), lost: 0 }] }],
		[
			'a record before a header is one',
			Buffer.concat([spoilt(last).subarray(rangeOf(last).start), whole]),
			{ ...none, damaged: [{ start: 0, end: whole.length - 1 - rangeOf(last).start, lost: 1 }] },
		],
	])('%s', (_, bytes, said) => {
		expect(readJournal(bytes, nightName)).toMatchObject(said);
	});

	test('a short record before a header is one that is lost', () => {
		const short = recordLine({ ...sampleRecord(1), e: [{ k: 'x' }] });
		short[short.length - 5] = 0x21;
		const read = readJournal(Buffer.concat([short, whole]), nightName);
		expect(read.damaged).toEqual([{ start: 0, end: short.length - 1, lost: 1 }]);
	});

	test('a record that was cut in two by a newline is one that is lost', () => {
		const { start, end } = rangeOf(5);
		const middle = start + 60;
		const cut = Buffer.concat([
			whole.subarray(0, middle),
			Buffer.from('\n'),
			whole.subarray(middle),
		]);
		const read = readJournal(cut);
		expect(read).toMatchObject({ ...none, damaged: [{ start, end: end + 1, lost: 1 }] });
		expect(recordsOf(read)).toEqual(records.filter(({ s }) => s !== 4));
	});

	test('lines of junk count as one record, wherever they stand', () => {
		const junk = 'some text\nand more\n';
		const { start } = rangeOf(5);
		const range = { start, end: start + junk.length - 1, lost: 1 };
		expect(readJournal(withBefore(5, junk))).toMatchObject({ ...none, damaged: [range] });
		const behind = Buffer.concat([whole, Buffer.from(junk)]);
		const end = behind.length - 1;
		expect(readJournal(behind)).toMatchObject({
			...none,
			quarantined: { start: whole.length, end, lost: 1 },
		});
	});

	test('junk with blank lines in it is several pieces', () => {
		const { start } = rangeOf(5);
		expect(readJournal(withBefore(5, 'some\n\n\nmore\n'))).toMatchObject({
			...none,
			damaged: [
				{ start, end: start + 4, lost: 1 },
				{ start: start + 7, end: start + 11, lost: 0 },
			],
		});
	});

	test('junk before a record on its line costs nothing', () => {
		const { start, end } = rangeOf(5);
		const read = readJournal(withBefore(5, 'junk'));
		expect(read).toMatchObject({ ...none, damaged: [{ start, end: end + 4, lost: 0 }] });
		expect(recordsOf(read)).toEqual(records);
	});

	test.each([1, 2, 5, 9])('a record is found though %i bytes behind it are gone', (count) => {
		// Its newline among them, so that the two stand on one line; the other's checksum lost its first digits.
		const { end } = rangeOf(5);
		const bytes = Buffer.concat([whole.subarray(0, end), whole.subarray(end + count)]);
		const isOtherWhole = count === 1;
		const left = records.filter(({ s }) => isOtherWhole || s !== 5);
		expect(recordsOf(readJournal(bytes))).toEqual(left);
	});

	test('a spoilt record and a good one on one line: one is lost', () => {
		const bytes = spoilt(5);
		bytes[rangeOf(5).end] = 0x20;
		const read = readJournal(bytes);
		const range = { start: rangeOf(5).start, end: rangeOf(6).end, lost: 1 };
		expect(read).toMatchObject({ ...none, damaged: [range] });
		expect(recordsOf(read)).toEqual(records.filter(({ s }) => s !== 4));
	});

	test('a file that begins as half a line does is searched to its end all the same', () => {
		const bytes = withBefore(0, ' {"v":2,"s":1}\n');
		const shift = bytes.length - whole.length;
		bytes[rangeOf(5).end + shift] = 0x0b;
		expect(recordsOf(readJournal(bytes))).toEqual(records);
	});

	test.each(['}', '{', '"}', '{"', '\\', '\\"}', '}}}"'])(
		'a record whose text has %s in it is found where the newline behind it was lost',
		(words) => {
			const told = { ...sampleRecord(count + 1), e: [{ k: 'memo-written', words } as never] };
			const line = recordLine(told);
			line[line.length - 1] = 0x0b;
			const bytes = Buffer.concat([whole, line, recordLine(sampleRecord(count + 2))]);
			expect(recordsOf(readJournal(bytes))).toEqual([...records, told, sampleRecord(count + 2)]);
		},
	);

	test('blank lines are no damage', () => {
		expect(readJournal(withBefore(5, '\n\n\n'))).toMatchObject(none);
	});
});

describe('whose night it is', () => {
	test('the first line outweighs the name of a file that was renamed', () => {
		const read = readJournal(whole, 'another-name');
		expect(read.id).toBe(nightName);
		expect(recordsOf(read)).toEqual(records);
	});

	test('a header further down is taken where there is no name, or where it is of that name', () => {
		for (const name of [null, nightName]) {
			const read = readJournal(Buffer.concat([Buffer.from('junk\n'), whole]), name);
			expect(read.header?.header).toEqual(sampleHeader());
			expect(recordsOf(read)).toEqual(records);
		}
		const other = readJournal(Buffer.concat([Buffer.from('junk\n'), whole]), 'another-name');
		expect([other.header, other.id, recordsOf(other)]).toEqual([null, 'another-name', []]);
	});

	test('a header behind what only looks like a line is found', () => {
		const alone = whole.subarray(rangeOf(1).start);
		const read = readJournal(Buffer.concat([Buffer.from('12345678 {"v":2,"s":1}'), alone]));
		expect(read.header?.header).toEqual(sampleHeader());
		expect(recordsOf(read)).toEqual(records);
	});
});

describe('bytes that do not belong', () => {
	const lines = [0, ...newlines.map((index) => index + 1)].slice(0, -1).map((start, index) => {
		return whole.subarray(start, (newlines[index] ?? 0) + 1);
	});

	test('junk between lines loses nothing', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(count), (junk, after) => {
				const at = (newlines[after] ?? 0) + 1;
				const bytes = Buffer.concat([
					whole.subarray(0, at),
					junk,
					Buffer.from('\n'),
					whole.subarray(at),
				]);
				expect(recordsOf(readJournal(bytes))).toEqual(records);
			}),
			{ numRuns: runs },
		);
	});

	test('junk anywhere costs at most the record that it stands in', () => {
		fc.assert(
			fc.property(
				fc.uint8Array({ minLength: 1, maxLength: 64 }),
				fc.nat(whole.length - 1),
				(junk, at) => {
					const bytes = Buffer.concat([whole.subarray(0, at), junk, whole.subarray(at)]);
					const read = readJournal(bytes, nightName);
					const kept = recordsOf(read);
					expect(kept).toEqual(records.filter((record) => kept.some(({ s }) => s === record.s)));
					expect(kept.length).toBeGreaterThanOrEqual(count - 1);
				},
			),
			{ numRuns: runs },
		);
	});

	test('lines in any order, doubled or left out give each record once', () => {
		const body = lines.slice(2);
		fc.assert(
			fc.property(fc.array(fc.nat(body.length - 1), { maxLength: 40 }), (order) => {
				const picked = order.map((index) => body[index] ?? Buffer.alloc(0));
				const read = readJournal(Buffer.concat([headerLine(), ...picked]));
				const seqs = new Set(order.map((index) => index + 1));
				expect(new Set(recordsOf(read).map((record) => record.s))).toEqual(seqs);
				expect(recordsOf(read)).toHaveLength(seqs.size);
				expect(read.duplicates).toBe(order.length - seqs.size);
			}),
			{ numRuns: runs },
		);
	});

	test('no bytes at all make it fail or invent a record', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => {
				expect(recordsOf(readJournal(bytes, nightName))).toEqual([]);
			}),
			{ numRuns: runs },
		);
	});

	test('likely beginnings repeated without end take no longer than their length allows', () => {
		const bytes = Buffer.from('00000000 {"v":1,"s":1,'.repeat(100_000));
		const before = process.cpuUsage();
		expect(recordsOf(readJournal(bytes, nightName))).toEqual([]);
		// Of the processor, which others may hold for seconds.
		const { user, system } = process.cpuUsage(before);
		expect((user + system) / 1000).toBeLessThan(2000);
	});

	test('records of another night are refused by its id, wherever they stand', () => {
		const other = sampleJournal(count, 'another-night');
		const otherRecords = other.subarray(headerLine(sampleHeader('another-night')).length * 2);
		const spliced = readJournal(Buffer.concat([whole, otherRecords]));
		expect(recordsOf(spliced)).toEqual(records);
		const withHeader = readJournal(Buffer.concat([whole, other]));
		expect(recordsOf(withHeader)).toEqual(records);
		expect(withHeader.foreign).toHaveLength(count + 2);
		expect(withHeader.quarantined).toBeNull();
		const inTheMiddle = Buffer.concat([lines[0] ?? other, lines[1] ?? other, other, whole]);
		expect(recordsOf(readJournal(inTheMiddle))).toEqual(records);
	});

	test('two records of one number that differ are both kept, since two copies may have written', () => {
		const other = sampleRecord(5, 'writer-2');
		const read = readJournal(Buffer.concat([whole, recordLine(other)]));
		expect(recordsOf(read)).toEqual([...records, other]);
		expect(read.duplicates).toBe(0);
	});

	test('behind a header of another night, damage to our own is still told', () => {
		const bytes = Buffer.concat([
			whole,
			headerLine(sampleHeader('another-night')),
			spoilt(count + 1).subarray(rangeOf(count + 1).start),
		]);
		expect(readJournal(bytes)).toMatchObject({
			foreign: [{ start: whole.length }],
			quarantined: { lost: 1 },
		});
	});

	test('a header of another night does not take the place of a lost one', () => {
		const bytes = Buffer.concat([
			Buffer.from('0badc0de {}\n'),
			...lines.slice(2),
			sampleJournal(2, 'another-night'),
		]);
		const read = readJournal(bytes, nightName);
		expect(read.id).toBe(nightName);
		expect(recordsOf(read)).toEqual(records);
	});
});

/** An entry of the first version: the numbers by which it calls records and incidents are texts now. */
const textOf = (entry: object): object =>
	Object.fromEntries(
		Object.entries(entry).map(([field, value]) => [
			field,
			field === 'incident' || field === 'of' ? String(value) : value,
		]),
	);

describe('versions', () => {
	// Its checksums were verified with Python's zlib when it was frozen.
	test('the first released format reads as it did then', () => {
		const bytes = readFileSync(new URL('../journals/v1.journal', import.meta.url));
		const expected = readFileSync(new URL('../journals/v1.records.json', import.meta.url), 'utf8');
		const read = readJournal(bytes);
		const { header, records } = JSON.parse(expected);
		expect(read.header?.header).toEqual(header);
		// With an identity and a time in the night's order, which that version had in the number alone.
		const upgraded = ({ e, ...record }: { readonly s: number; readonly e: readonly object[] }) =>
			expect.objectContaining({
				...{ ...record, v: 2, id: String(record.s), h: [0, record.s] },
				e: e.map((entry) => expect.objectContaining(textOf(entry))),
			});
		expect(recordsOf(read)).toEqual(records.map(upgraded));
		expect(read).toMatchObject({ isNewer: false, isOlder: true, damaged: [], torn: null });
	});

	test('a newer version of a record or of the format is known as such, and still read', () => {
		const newer = { ...sampleRecord(count + 1), v: 3 } as never;
		const read = readJournal(Buffer.concat([whole, recordLine(newer)]));
		expect(read.isNewer).toBe(true);
		expect(recordsOf(read)).toHaveLength(count + 1);
		const header = headerLine({ ...sampleHeader(), format: 'rackside-night/3' });
		expect(readJournal(header).isNewer).toBe(true);
		const unknown = headerLine({ ...sampleHeader(), format: 'something-else' });
		expect(readJournal(unknown).isNewer).toBe(true);
	});

	test('an older version is known as such', () => {
		const older = { ...sampleRecord(count + 1), v: 0 } as never;
		expect(readJournal(Buffer.concat([whole, recordLine(older)])).isOlder).toBe(true);
	});

	test('a kind of entry that is not known is kept as it is', () => {
		const record = {
			...sampleRecord(1),
			e: [{ k: 'from-the-future', anything: [1, { a: null }] }],
		};
		const read = readJournal(Buffer.concat([headerLine(), recordLine(record)]));
		expect(recordsOf(read)).toEqual([record]);
	});

	test('fields in another order are read too', () => {
		const { v, s, w, h, t, m, e } = sampleRecord(1);
		const body = JSON.stringify({ e, m, t, h, w, s, v });
		const sum = crc32(body, seedOf(nightName)).toString(16).padStart(8, '0');
		const read = readJournal(Buffer.concat([headerLine(), Buffer.from(`${sum} ${body}\n`)]));
		expect(recordsOf(read)).toEqual([sampleRecord(1)]);
	});

	test('a right checksum over something that is no record is damage, not a record', () => {
		const empty = '{"v":1,"s":1,"w":"a","t":1,"m":1,"e":[{}]}';
		for (const body of ['{"v":1}', empty, '[]', 'null']) {
			const sum = crc32(body, crc32(nightName)).toString(16).padStart(8, '0');
			const read = readJournal(Buffer.concat([headerLine(), Buffer.from(`${sum} ${body}\n`)]));
			expect(recordsOf(read).flatMap((record) => record.e)).toEqual([]);
			const start = headerLine().length;
			const lost = { start, end: start + 9 + body.length, lost: 1 };
			// An entry that says nothing is none, but its record is one.
			expect(read.quarantined).toEqual(body === empty ? null : lost);
		}
	});
});

describe('megabytes of junk', () => {
	// A read that looks at every byte a few times takes a tenth of a second; one that looks on to the end
	// from each line took from 20 seconds to hours.
	const MOST_SECONDS = 4;
	const junk = (bytes: number, of: string): Buffer => Buffer.alloc(bytes, of);

	test.each([
		['newlines behind the records', Buffer.concat([whole, junk(20_000_000, '\n')])],
		['newlines before them', Buffer.concat([junk(20_000_000, '\n'), whole])],
		['short lines', Buffer.concat([whole, junk(6_000_000, 'x\n'), whole])],
		['beginnings of records', Buffer.concat([whole, junk(6_000_000, '12345678 {"v":\n')])],
		['one long line', Buffer.concat([whole, junk(6_000_000, '12345678 {"v":')])],
	])('take time in proportion, and no record is lost: %s', (_, bytes) => {
		const before = process.cpuUsage();
		const read = readJournal(bytes);
		const { user, system } = process.cpuUsage(before);
		expect((user + system) / 1e6).toBeLessThan(MOST_SECONDS);
		expect(recordsOf(read).slice(0, count)).toEqual(records);
		expect(read.damaged.length).toBeLessThan(3);
	});
});
