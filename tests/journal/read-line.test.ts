// One line of a journal whose checksum is right, whatever stands behind it: read where it has the shape of a
// record, and no record where it has not. Sums by zlib's CRC-32, as the lines themselves.

import { crc32 } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { encodeLine, isLineWhole, prefixLength } from '../../src/journal/line.ts';
import {
	decodeLine,
	formatVersion,
	glanceAtLine,
	readHeaderLine,
} from '../../src/journal/read-line.ts';
import type { NightHeader } from '../../src/journal/record.ts';

const SEED = 0;

function line(body: string) {
	const sum = crc32(Buffer.from(body), SEED).toString(16).padStart(8, '0');
	const bytes = Buffer.from(`${sum} ${body}`);
	return { bytes, range: { start: 0, end: bytes.length } };
}

/** The fields in another order than the program writes them, so that all of them are looked at. */
const fields = { e: [{ k: 'a' }], m: 3, t: 2, w: 'w1', s: 7, v: 2, h: [5, 1] };
const read = (changes: object) => {
	const { bytes, range } = line(JSON.stringify({ ...fields, ...changes }));
	const found = glanceAtLine(bytes, range);
	return found && { found, record: decodeLine(bytes, found) };
};

describe('a line with its fields in any order', () => {
	test('is the record that it says', () => {
		expect(read({})).toEqual({
			found: {
				start: 0,
				end: expect.any(Number),
				version: 2,
				seq: 7,
				writer: 'w1',
				kind: 'record',
			},
			record: { v: 2, s: 7, w: 'w1', id: 'w1:7', h: [5, 1], t: 2, m: 3, e: [{ k: 'a' }] },
		});
		expect(read({ e: [] })?.found.kind).toBe('record');
		expect(read({ e: [{ k: 'checkpoint', state: 1 }] })?.found.kind).toBe('checkpoint');
	});

	test.each([
		...[-1, 1.5, '7', null].flatMap((value) => [{ v: value }, { s: value }]),
		...[1, null].map((w) => ({ w })),
		...['2', null].flatMap((value) => [{ t: value }, { m: value }]),
		...[{}, null, 'a', [1], [null], [{}], [{ k: 1 }], ['a'], [{ k: 'a' }, null]].map((e) => ({
			e,
		})),
	])('is none with %j', (changes) => {
		expect(read(changes)).toBeNull();
	});

	test.each(['', '3', 'null', '"a"', '[]', '{"v":2', '{"v":2,"s":7}'])('is none as %j', (body) => {
		const { bytes, range } = line(body);
		expect(glanceAtLine(bytes, range)).toBeNull();
	});

	test('has what else it may have, and not what is no such thing', () => {
		expect(read({ p: ['one.a:4'], i: '12' })?.record).toMatchObject({ p: ['one.a:4'], id: '12' });
		for (const p of ['one.a:4', [1], ['one.a:4', 1], null]) {
			expect(read({ p })?.record, JSON.stringify(p)).not.toHaveProperty('p');
		}
		for (const h of [[5], [5, 1, 2], [5, 'x'], [-1, 0], 'h', null]) {
			expect(read({ h })?.record.h, JSON.stringify(h)).toEqual([0, 7]);
		}
		expect(read({ i: 12 })?.record.id).toBe('w1:7');
	});
});

test('a line as this program begins it keeps number and writer, whatever its entries are', () => {
	const start = '{"v":2,"s":7,"w":"w1","t":2,"m":3,"e":[';
	for (const entries of ['{"k":', '1]}', '{"k":1}]}', 'null,{"k":"a"}]}', '"a"]}']) {
		const { bytes, range } = line(start + entries);
		const found = glanceAtLine(bytes, range)!;
		expect(found, entries).toEqual({
			...range,
			...{ version: 2, seq: 7, writer: 'w1', kind: 'record' },
		});
		expect(decodeLine(bytes, found)).toMatchObject({ s: 7, w: 'w1', e: [] });
	}
	const { bytes, range } = line(`${start}{"k":"checkpoint","state"`);
	expect(glanceAtLine(bytes, range)?.kind).toBe('checkpoint');
});

test('a line is looked at where it stands, with others before it', () => {
	const one = line('{"v":2,"s":7,"w":"w1","t":2,"m":3,"e":[{"k":');
	const bytes = Buffer.concat([one.bytes, Buffer.from('\n'), one.bytes]);
	const range = { start: one.bytes.length + 1, end: bytes.length };
	expect(glanceAtLine(bytes, range)).toMatchObject({ ...range, seq: 7 });
});

test('a record with what it follows from and an identity of its own comes back as it was written', () => {
	const record = read({ p: ['one.a:4'], i: '12' })!.record;
	const bytes = encodeLine(record, SEED);
	const found = glanceAtLine(bytes, { start: 0, end: bytes.length - 1 })!;
	expect(decodeLine(bytes, found)).toEqual(record);
});

const header = { k: 'header', format: 'rackside-night/2', journal: 'night-1' };
const headed = (entries: readonly unknown[], s = 0) => {
	const { bytes, range } = line(JSON.stringify({ v: 2, s, w: 'w1', t: 2, m: 3, e: entries }));
	return readHeaderLine(bytes, range);
};

describe('the header of a night', () => {
	test('has what a later version may have left out', () => {
		expect(headed([header])?.header).toEqual({
			...header,
			...{
				boot: '',
				title: '',
				showPath: '',
				showHash: '',
				show: null,
				isRehearsal: false,
				from: 1,
			},
		});
		expect(headed([{ ...header, title: 'Quay', from: 4 }])?.header).toMatchObject({
			...{ title: 'Quay', from: 4 },
		});
	});

	test.each([
		[[]],
		[[{ ...header, k: 'memo-written' }]],
		[[{ ...header, journal: 1 }]],
		[[{ ...header, format: null }]],
		[[{ k: 'header', journal: 'night-1' }]],
		[[null]],
	])('is none as %j', (entries) => {
		expect(headed(entries)).toBeNull();
	});

	test('is none where the line is only its beginning, or the sum is that of a night', () => {
		const { bytes } = line(JSON.stringify({ v: 2, s: 0, w: 'w1', t: 2, m: 3, e: [header] }));
		for (const end of [0, prefixLength, prefixLength + 1, bytes.length - 1]) {
			expect(readHeaderLine(bytes, { start: 0, end })).toBeNull();
		}
	});

	test.each([
		['rackside-night/2', 2],
		['rackside-night/12', 12],
		['rackside-night/', null],
		['rackside-night/2 ', null],
		['a rackside-night/2', null],
		['rackside-night/1234567', null],
	])('of the form %s has version %j', (format, version) => {
		expect(formatVersion({ format } as NightHeader)).toBe(version);
	});
});

describe('a checksum', () => {
	test('has lower-case hex digits alone, none that only counts like one', () => {
		for (let number = 0; number < 40; number += 1) {
			const { bytes, range } = line(`{"n":${number}}`);
			expect(isLineWhole(bytes, range, SEED)).toBe(true);
			for (let place = 0; place < 8; place += 1) {
				const byte = bytes[place] ?? 0;
				// 'a' is 10 and so is ':', counted from '0'; '7' is 7 and so is '^', counted from 'a'.
				const alike = byte >= 0x61 ? byte - 0x57 + 0x30 : byte - 0x30 + 0x57;
				const changed = Buffer.from(bytes);
				changed[place] = alike;
				expect(isLineWhole(changed, range, SEED), String(changed)).toBe(false);
			}
		}
	});

	test('has no sign below 0 or above f that makes the same sum with the one before it', () => {
		let tried = 0;
		for (let number = 0; number < 200; number += 1) {
			const { bytes, range } = line(`{"n":${number}}`);
			const [one = 0, two = 0] = ['0', '1'].map((place) =>
				Number.parseInt(String.fromCharCode(bytes[Number(place)] ?? 0), 16),
			);
			// As 'g' counts 16 and '/' counts less than nothing: one less before it, or one more.
			const pairs = [
				...(one > 0 && one < 10 ? [[0x30 + one - 1, 0x57 + two + 16]] : []),
				...(one < 9 && two > 6 ? [[0x30 + one + 1, 0x30 + two - 16]] : []),
			];
			for (const pair of pairs) {
				tried += 1;
				const changed = Buffer.from(bytes);
				changed.set(pair);
				expect(isLineWhole(changed, range, SEED), String(changed)).toBe(false);
			}
		}
		expect(tried).toBeGreaterThan(50);
	});

	test('stands apart from what it is of by a space', () => {
		const { bytes, range } = line('{"n":1}');
		bytes[prefixLength - 1] = 0x09;
		expect(isLineWhole(bytes, range, SEED)).toBe(false);
	});

	test('of nothing makes no line', () => {
		const { bytes, range } = line('');
		expect(isLineWhole(bytes, range, SEED)).toBe(false);
	});
});
