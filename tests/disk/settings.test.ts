// Preferences are kept where they can be, and never in the way.

import {
	chmodSync,
	mkdirSync,
	readFileSync,
	rmSync,
	statSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { realDisk } from '../../src/disk/real-disk.ts';
import { defaultSettings, openSettings, settingsNow } from '../../src/disk/settings.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

const isRoot = process.getuid?.() === 0;
const open = (folder: string) => openSettings({ disk: realDisk, folder });

describe('preferences', () => {
	test('are the usual ones at first, and reading them writes nothing', async () => {
		const folder = join(scratchFolder(), 'data');
		const store = await open(folder);
		expect(store).toMatchObject({ values: defaultSettings, problem: null });
		expect(realDisk.stat(folder)).toBeNull();
	});

	test('outlast the program, for their owner alone', async () => {
		const folder = join(scratchFolder(), 'data');
		const store = await open(folder);
		expect(store.change({ keys: { next: 'n' }, colours: 'dark', lastShow: '/a.yaml' })).toBeNull();
		expect(store.change({ colours: 'amber' })).toBeNull();
		expect(store.change({ times: { capo: 6 } })).toBeNull();
		expect(store.values).toEqual({
			keys: { next: 'n' },
			colours: 'amber',
			times: { capo: 6 },
			midi: null,
			lastShow: '/a.yaml',
		});
		expect((await open(folder)).values).toEqual(store.values);
		expect(settingsNow({ disk: realDisk, folder }).values).toEqual(store.values);
		expect(store.path).toBe(join(folder, 'settings.json'));
		// Files of earlier versions have this name, and those may read what is written now.
		expect(JSON.parse(readFileSync(store.path, 'utf8')).looks).toBe('amber');
		expect(statSync(store.path).mode & 0o777).toBe(0o600);
		expect(statSync(folder).mode & 0o777).toBe(0o700);
		expect(store.reset()).toBeNull();
		expect((await open(folder)).values).toEqual(defaultSettings);
	});

	test('behind a link, at a pipe or open for others are neither read nor written, and that is said', async () => {
		const folder = scratchFolder();
		const elsewhere = join(scratchFolder(), 'elsewhere');
		const path = join(folder, 'settings.json');
		writeFileSync(elsewhere, '{"looks": "dark"}', { mode: 0o600 });
		const refused = async (trouble: string): Promise<void> => {
			const store = await open(folder);
			expect(store.values).toEqual(defaultSettings);
			expect(settingsNow({ disk: realDisk, folder })).toEqual({
				values: defaultSettings,
				problem: { code: 'settings-unreadable', trouble },
			});
			expect(store.problem).toEqual({ code: 'settings-unreadable', trouble });
			expect(store.change({ colours: 'amber' })).toEqual({ code: 'settings-not-kept', trouble });
			expect(store.reset()).toEqual({ code: 'settings-not-kept', trouble });
			rmSync(path);
		};
		symlinkSync(elsewhere, path);
		await refused('ELOOP');
		expect(readFileSync(elsewhere, 'utf8')).toBe('{"looks": "dark"}');
		makePipe(path);
		await refused('PIPE');
		writeFileSync(path, '{"looks": "dark"}');
		chmodSync(path, 0o666);
		await refused('OPEN_TO_OTHERS');
	});

	test('that are damaged give the usual ones and a sentence, until they are reset', async () => {
		const folder = scratchFolder();
		writeFileSync(join(folder, 'settings.json'), '{"looks": "da');
		const store = await open(folder);
		expect(store.values).toEqual(defaultSettings);
		expect(settingsNow({ disk: realDisk, folder }).values).toEqual(defaultSettings);
		expect(store.problem).toEqual({ code: 'settings-unreadable', trouble: null });
		expect(store.change({ colours: 'dark' })).toEqual({
			code: 'settings-not-kept',
			trouble: null,
		});
		expect(readFileSync(join(folder, 'settings.json'), 'utf8')).toBe('{"looks": "da');
		expect(store.reset()).toBeNull();
		expect(await open(folder)).toMatchObject({ values: defaultSettings, problem: null });
	});

	test.each([
		'[]',
		'null',
		'{"looks":"normal"}',
		'{"keys":[1],"looks":3,"times":[45],"lastShow":{}}',
		'{"keys":{"next":7,"done":"x"}}',
		'{"__proto__":{"looks":"dark"}}',
	])('of a wrong shape are passed over: %s', async (text) => {
		const folder = scratchFolder();
		writeFileSync(join(folder, 'settings.json'), text);
		const { values } = await open(folder);
		const keys = text.includes('done') ? { done: 'x' } : {};
		expect(values).toEqual({ ...defaultSettings, keys });
		expect(({} as { looks?: string }).looks).toBeUndefined();
	});

	test('that cannot be kept hold for now, and say so', async () => {
		const folder = scratchFolder();
		writeFileSync(join(folder, 'file'), '');
		const store = await open(join(folder, 'file', 'data'));
		expect(store.values).toEqual(defaultSettings);
		expect(store.change({ colours: 'dark' })).not.toBeNull();
	});

	test('on a full disk that keeps quiet about it are found out', async () => {
		const folder = join(scratchFolder(), 'data');
		const cut = { ...realDisk, read: () => Buffer.from('{"loo') };
		const store = await openSettings({ disk: cut, folder });
		expect(store.change({ colours: 'dark' })).toEqual({
			code: 'settings-not-kept',
			trouble: null,
		});
		expect(store.values.colours).toBe('dark');
	});

	test.skipIf(isRoot)('that may not be read give the usual ones', async () => {
		const folder = scratchFolder();
		mkdirSync(join(folder, 'data'));
		writeFileSync(join(folder, 'data', 'settings.json'), '{}');
		chmodSync(join(folder, 'data', 'settings.json'), 0);
		expect((await open(join(folder, 'data'))).problem).toMatchObject({
			code: 'settings-unreadable',
			trouble: 'EACCES',
		});
	});
});
