// Ports by name: the library is no part of the program, so that what it lacks is said; with one, each message is
// handed over whole.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { midiNames } from '../../src/disk/midi-names.ts';
import { midiFaultWords } from '../../src/words/midi.ts';
import { runCommand } from '../cli/run-command.ts';

/** What a library of this kind offers, as its manual says. */
function library(names: readonly string[]) {
	const sent: (readonly number[])[] = [];
	const opened: number[] = [];
	class Output {
		getPortCount = () => names.length;
		getPortName = (at: number) => names[at] ?? '';
		openPort = (at: number) => opened.push(at);
		closePort = () => {};
		sendMessage = (message: readonly number[]) => sent.push(message);
	}
	return { sent, opened, load: async () => ({ Output }) };
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
