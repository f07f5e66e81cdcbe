// A night that had to go on in several files is one night again when it is read.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nightFindings } from '../../src/journal/findings.ts';
import { decodeCheckpoint, joinSegments } from '../../src/journal/join-segments.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { decodeLine } from '../../src/journal/read-line.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import {
	headerLine,
	nightName,
	recordLine,
	runs,
	sampleHeader,
	sampleJournal,
	sampleRecord,
} from './sample-journal.ts';

function segment(...records: JournalRecord[]) {
	const lines = records.map((record) => recordLine(record));
	return readJournal(Buffer.concat([headerLine(), headerLine(), ...lines]));
}

function checkpoint(s: number, writer = 'writer-1'): JournalRecord {
	return { ...sampleRecord(s, writer), e: [{ k: 'checkpoint', state: { upTo: s } } as never] };
}

function written(night: ReturnType<typeof joinSegments>): [number, string][] {
	return night.lines.map(({ line }) => [line.seq, line.writer]);
}

const range = (from: number, to: number, writer?: string) =>
	Array.from({ length: to - from + 1 }, (_, index) => sampleRecord(from + index, writer));

describe('which night it is', () => {
	const unheaded = (...seqs: number[]) => {
		const lines = seqs.map((seq) => recordLine(sampleRecord(seq)));
		return readJournal(Buffer.concat(lines), nightName);
	};

	test('the names of files that lost their headers say', () => {
		const night = joinSegments([readJournal(Buffer.from('!\n')), unheaded(1, 2), unheaded(3)]);
		expect(night).toMatchObject({ id: nightName, header: null, lastSeq: 3, missing: [] });
		expect(night.lines).toHaveLength(3);
	});

	test('one that stands in any of them says', () => {
		const night = joinSegments([unheaded(1, 2), segment(sampleRecord(3))]);
		expect(night).toMatchObject({ id: nightName, lastSeq: 3, missing: [] });
	});

	test('none where nothing does', () => {
		expect(joinSegments([readJournal(Buffer.from('!\n'))])).toMatchObject({ id: null, lastSeq: 0 });
	});

	test('a newer one when any of its files is', () => {
		const newer = headerLine({ ...sampleHeader(), format: 'rackside-night/9' });
		const files = [segment(...range(1, 2)), readJournal(Buffer.concat([newer, newer]))];
		expect(joinSegments(files).isNewer).toBe(true);
		expect(joinSegments(files.slice(0, 1)).isNewer).toBe(false);
	});
});

describe('a whole state', () => {
	const upTo = (night: ReturnType<typeof joinSegments>) =>
		night.checkpoints.map(({ line }) => line.seq);

	test('of a writer counts up to where another went on, however often both wrote the same number', () => {
		const one = range(1, 4, 'writer-1');
		const other = range(3, 6, 'writer-2');
		const states = [1, 2, 3, 4].map((seq) => checkpoint(seq, 'writer-1'));
		const night = joinSegments([segment(...one, ...states), segment(...other)]);
		expect(
			written(night)
				.map(([, writer]) => writer.slice(-1))
				.join(''),
		).toBe('112222');
		expect(upTo(night)).toEqual([1, 2]);
	});

	test('is the last by its number, in whichever file it stands', () => {
		const files = [segment(...range(1, 6), checkpoint(6)), segment(checkpoint(2), checkpoint(4))];
		expect(upTo(joinSegments(files))).toEqual([2, 4, 6]);
		expect(joinSegments(files).checkpoint?.line.seq).toBe(6);
	});
});

describe('one writer', () => {
	test('the same record in two files counts once', () => {
		const night = joinSegments([segment(...range(1, 6)), segment(...range(4, 9))]);
		expect(night.lines.map(({ bytes, line }) => decodeLine(bytes, line))).toEqual(range(1, 9));
		expect(night).toMatchObject({ lastSeq: 9, missing: [], conflicts: [] });
		expect(nightFindings(night)).toEqual([]);
	});

	test('a record damaged in one file is taken from the other', () => {
		const first = Buffer.from(sampleJournal(6));
		first[first.length - 40] = 0;
		const night = joinSegments([readJournal(first), segment(...range(6, 7))]);
		expect(night.lines).toHaveLength(7);
		expect(nightFindings(night)).toMatchObject([{ code: 'bytes-damaged', isWarning: false }]);
	});

	test('however the records are spread over files, they come out in order, each once', () => {
		fc.assert(
			fc.property(
				fc.array(fc.array(fc.integer({ min: 1, max: 15 })), { maxLength: 5 }),
				(files) => {
					const night = joinSegments(
						files.map((seqs) => segment(...seqs.map((seq) => sampleRecord(seq)))),
					);
					const seqs = [...new Set(files.flat())].toSorted((one, other) => one - other);
					expect(night.lines.map(({ line }) => line.seq)).toEqual(seqs);
					const missing = night.missing.reduce((sum, gap) => sum + gap.to - gap.from + 1, 0);
					expect(missing).toBe((seqs.at(-1) ?? 0) - seqs.length);
				},
			),
			{ numRuns: runs },
		);
	});

	test('no files at all are an empty night', () => {
		expect(joinSegments([])).toMatchObject({ id: null, header: null, lines: [], lastSeq: 0 });
	});

	test('a file of another night is left out', () => {
		const other = readJournal(sampleJournal(3, 'another-night'));
		const night = joinSegments([segment(...range(1, 2)), other]);
		expect(night.lines).toHaveLength(2);
	});
});

describe('checkpoints', () => {
	test('the last one counts, and none makes a gap', () => {
		const night = joinSegments([
			segment(...range(1, 3), checkpoint(3), ...range(4, 5), checkpoint(5), ...range(6, 6)),
		]);
		expect(night.checkpoint && decodeCheckpoint(night.checkpoint)).toEqual({
			seq: 5,
			state: { upTo: 5 },
		});
		expect(night).toMatchObject({ lastSeq: 6, missing: [] });
		expect(night.lines).toHaveLength(6);
	});

	test('records lost before one do not touch how things stand', () => {
		const healed = joinSegments([segment(...range(1, 2), ...range(4, 5), checkpoint(5))]);
		expect(healed.missing).toEqual([{ from: 3, to: 3 }]);
		expect(nightFindings(healed).map(nightFindingWords)).toEqual([
			'1 record of this night cannot be read; how things stand now is not touched by it.',
		]);
		const open = joinSegments([segment(checkpoint(2), ...range(1, 2), ...range(5, 6))]);
		expect(nightFindings(open).map(nightFindingWords)).toEqual([
			'2 records of this night cannot be read: check what is on the rack and in hands.',
		]);
	});

	test('one whose last record is lost still tells the number to go on from', () => {
		const night = joinSegments([segment(...range(1, 4), checkpoint(5))]);
		expect(night).toMatchObject({ lastSeq: 5, missing: [{ from: 5, to: 5 }] });
	});
});

describe('two writers', () => {
	test('the one who led to the last record is followed', () => {
		const night = joinSegments([
			segment(...range(1, 3), ...range(4, 5, 'writer-2'), ...range(4, 8, 'writer-3')),
		]);
		expect(written(night).slice(2)).toEqual([
			[3, 'writer-1'],
			[4, 'writer-3'],
			[5, 'writer-3'],
			[6, 'writer-3'],
			[7, 'writer-3'],
			[8, 'writer-3'],
		]);
		expect(night.conflicts).toHaveLength(2);
		expect(nightFindings(night).map(nightFindingWords)).toEqual([
			'Two copies of the program wrote into this night at once; 2 records of one of them were left aside.',
		]);
	});

	test('a checkpoint of the one who is not followed is not used', () => {
		const night = joinSegments([
			segment(
				...range(1, 2),
				checkpoint(2, 'writer-2'),
				...range(3, 4, 'writer-2'),
				checkpoint(4, 'writer-2'),
				...range(3, 6, 'writer-3'),
			),
		]);
		expect(night.checkpoint?.line.seq).toBe(2);
	});

	test('interleaved to the same number, one of them is followed throughout', () => {
		const night = joinSegments([
			segment(
				sampleRecord(1),
				sampleRecord(2, 'writer-2'),
				sampleRecord(2, 'writer-3'),
				sampleRecord(3, 'writer-3'),
				sampleRecord(3, 'writer-2'),
			),
		]);
		expect(
			new Set(
				written(night)
					.slice(1)
					.map(([, writer]) => writer),
			).size,
		).toBe(1);
	});
});

describe('what is said about it', () => {
	test('each kind of trouble has its sentence', () => {
		const whole = sampleJournal(4);
		const torn = joinSegments([readJournal(whole.subarray(0, -5))]);
		expect(nightFindings(torn)).toMatchObject([{ code: 'tail-cut-off', isWarning: false }]);
		const wrong = Buffer.from(whole);
		wrong[whole.length - 9] = 0;
		expect(nightFindings(joinSegments([readJournal(wrong)]))).toMatchObject([
			{ code: 'record-quarantined', isWarning: true, count: 1 },
		]);
		wrong[whole.length - 200] = 0;
		expect(nightFindings(joinSegments([readJournal(wrong)]))).toMatchObject([
			{ code: 'record-quarantined', count: 2 },
		]);
		const newer = headerLine({ ...sampleHeader(), format: 'rackside-night/7' });
		expect(nightFindings(joinSegments([readJournal(newer)]))).toMatchObject([
			{ code: 'newer-format' },
		]);
		const spliced = Buffer.concat([whole, sampleJournal(1, 'another-night')]);
		expect(nightFindings(joinSegments([readJournal(spliced)]))).toMatchObject([
			{ code: 'foreign-records', count: 3 },
		]);
		const headless = joinSegments([readJournal(whole.subarray(10), nightName)]);
		expect(nightFindings(headless).map((finding) => finding.code)).not.toContain('header-missing');
		const lost = joinSegments([readJournal(recordLine(sampleRecord(1), 'night'), 'night')]);
		expect(nightFindings(lost)).toMatchObject([{ code: 'header-missing', isEmpty: false }]);
		const empty = joinSegments([readJournal(Buffer.alloc(0), 'night')]);
		expect(nightFindings(empty)).toMatchObject([{ code: 'header-missing', isEmpty: true }]);
	});

	test('one record of another night is one', () => {
		const other = headerLine(sampleHeader('another-night'));
		const night = joinSegments([readJournal(Buffer.concat([sampleJournal(2), other]))]);
		expect(nightFindings(night).map(nightFindingWords)).toEqual([
			"1 record in this night's file belongs to another night and was left aside.",
		]);
	});

	test('damaged places are counted', () => {
		const header = headerLine();
		const bytes = Buffer.concat([header, header, Buffer.from('x\n'), sampleJournal(2)]);
		const one = joinSegments([readJournal(bytes)]);
		expect(nightFindings(one).map(nightFindingWords)).toEqual([
			"A place in the night's file is damaged, but no record is missing.",
		]);
		const two = joinSegments([readJournal(Buffer.concat([bytes, Buffer.from('y\n'), bytes]))]);
		expect(nightFindings(two).map(nightFindingWords)).toEqual([
			"3 places in the night's file are damaged, but no record is missing.",
		]);
	});

	test('a damaged checkpoint at the end is not taken for a lost record', () => {
		const bytes = Buffer.concat([sampleJournal(2), recordLine(checkpoint(2))]);
		bytes[bytes.length - 5] = 0x21;
		const night = joinSegments([readJournal(bytes)]);
		expect(nightFindings(night)).toMatchObject([{ code: 'bytes-damaged', isWarning: false }]);
	});
});
