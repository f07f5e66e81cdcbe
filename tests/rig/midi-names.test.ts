// Ports by name: the library is no part of the program, so that what it lacks is said; with one, each message is
// handed over whole.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { type MidiLibrary, midiNames } from '../../src/disk/midi-names.ts';
import { midiFaultWords } from '../../src/words/midi.ts';
import { runCommand } from '../cli/run-command.ts';
import type { DeclaredOutput } from './midi-peer.ts';

/**
 * As the library declares itself, with what its own code throws: an error without a code for a port that is not there,
 * and for a message that is no list of numbers.
 */
function library(names: readonly string[]) {
	const sent: (readonly number[])[] = [];
	const opened: number[] = [];
	const now = { names };
	class Output implements Pick<DeclaredOutput, keyof InstanceType<MidiLibrary['Output']>> {
		getPortCount = () => now.names.length;
		getPortName = (at: number) => {
			const name = now.names[at];
			if (name === undefined) throw new TypeError('Internal RtMidi error');
			return name;
		};
		openPort = (at: number) => {
			if (at >= now.names.length) throw new RangeError('Invalid MIDI port number');
			opened.push(at);
		};
		closePort = () => {};
		sendMessage = (message: number[] | Buffer) => {
			if (!Array.isArray(message)) throw new Error('First argument must be an array or Buffer');
			if (now.names.length === 0) throw new Error('Internal RtMidi error');
			sent.push(message);
		};
	}
	return { now, sent, opened, load: async () => ({ Output }) };
}

test('a port by the beginning of its name, and each message whole', async () => {
	const { load, sent, opened } = library(['Through 14:0', 'Pedals 20:0', 'Pedals two 24:0']);
	const names = await midiNames('Pedals', load);
	const line = names.open();
	expect(opened).toEqual([1]);
	expect(line.write(Uint8Array.from([0xb1, 0, 2, 0xb1, 32, 44, 0xc1, 11, 0xf8]), 0)).toBe(9);
	expect(sent).toEqual([[0xb1, 0, 2], [0xb1, 32, 44], [0xc1, 11], [0xf8]]);
	expect(line.isThere()).toBe(true);
});

test('a name that no port has, and the names that there are', async () => {
	const { load } = library(['Through 14:0']);
	const names = await midiNames('Pedals', load);
	expect(() => names.open()).toThrow(expect.objectContaining({ code: 'NO_SUCH_PORT' }));
	expect(names.ports()).toEqual(['Through 14:0']);
	const fault = { port: 'Pedals', trouble: 'NO_SUCH_PORT', isGone: false, ports: names.ports() };
	expect(midiFaultWords(fault)).toMatch(/no port Pedals \(there are Through 14:0\)/);
});

test('a port that goes, and comes back under another number: never there meanwhile, and no error without a code', async () => {
	const { load, now, opened } = library(['Pedals 20:0', 'Pedals two 24:0']);
	const names = await midiNames('Pedals', load);
	const line = names.open();
	// Another one of that name is not the one that was opened.
	now.names = ['Pedals two 24:0'];
	expect(line.isThere()).toBe(false);
	now.names = ['Pedals 28:0', 'Pedals two 24:0'];
	expect(line.isThere()).toBe(false);
	line.close();
	expect(names.open().isThere()).toBe(true);
	expect(opened).toEqual([0, 0]);
	now.names = [];
	expect(() => line.write(Uint8Array.from([0xc0, 5]), 0)).toThrow(
		expect.objectContaining({ code: 'EIO' }),
	);
	expect(names.open).toThrow(expect.objectContaining({ code: 'NO_SUCH_PORT' }));
});

test('whatever the library throws has a code: a key press is never ended by it', async () => {
	const fails = (): never => {
		throw new Error('Internal RtMidi error');
	};
	const all = { getPortCount: () => 1, getPortName: () => 'Pedals', closePort: fails };
	const of = (more: object) =>
		midiNames('Pedals', async () => ({
			Output: class {
				constructor() {
					Object.assign(this, all, { openPort: () => {}, sendMessage: fails }, more);
				}
			} as unknown as MidiLibrary['Output'],
		}));
	expect((await of({ openPort: fails })).open).toThrow(expect.objectContaining({ code: 'EIO' }));
	const line = (await of({})).open();
	expect(() => line.write(Uint8Array.from([0xf8]), 0)).toThrow(
		expect.objectContaining({ code: 'EIO' }),
	);
	expect(line.close).not.toThrow();
	expect((await of({ getPortName: fails })).ports()).toEqual([]);
});

/** Where the library is installed, if it is: `RACKSIDE_MIDI_PEER=/a/folder` with it in node_modules. */
const PEER = process.env.RACKSIDE_MIDI_PEER;

test.skipIf(PEER === undefined)(
	'the library itself declares what we use, and is loaded',
	async () => {
		const entry = createRequire(join(PEER ?? '', 'any.js')).resolve('@julusian/midi');
		const declared = readFileSync(join(dirname(entry), 'output.d.ts'), 'utf8');
		const ours = readFileSync(new URL('midi-peer.ts', import.meta.url), 'utf8');
		const members = [...ours.matchAll(/^\t(\w+\(.*\): .*;)$/gm)].map(([, line = '']) => line);
		expect(members).not.toEqual([]);
		for (const member of members) expect(declared).toContain(`    ${member}`);
		const { open, ports } = await midiNames(
			'no port has this name',
			() => import(pathToFileURL(entry).href),
		);
		// A machine without a sequencer refuses the first step; one with it has no such port.
		expect(open).toThrow(
			expect.objectContaining({ code: expect.stringMatching(/^NO_(MIDI|SUCH_PORT)$/) }),
		);
		expect(ports().every((name) => typeof name === 'string')).toBe(true);
	},
);

test('without the library: what is missing and how to add it', async () => {
	const { open } = await midiNames('Pedals');
	expect(open).toThrow(expect.objectContaining({ code: 'NO_LIBRARY' }));
	const fault = { port: 'Pedals', trouble: 'NO_LIBRARY', isGone: false, ports: [] };
	expect(midiFaultWords(fault)).toMatch(/Add it: npm install -g @julusian\/midi/);
});

test('the port of all nights is a preference, none unless set', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-port-'));
	const place = { cwd: folder, data: folder };
	const port = async () => (await runCommand(place, 'settings', 'midi')).out;
	expect(await port()).toBe('none\n');
	await runCommand(place, 'settings', 'midi', '/dev/snd/midiC1D0');
	expect(await port()).toBe('/dev/snd/midiC1D0\n');
	await runCommand(place, 'settings', 'midi', 'none');
	expect(await port()).toBe('none\n');
	await runCommand(place, 'settings', 'midi', 'Pedals');
	await runCommand(place, 'settings', 'midi', '--reset');
	expect(await port()).toBe('none\n');
	rmSync(folder, { recursive: true });
});
