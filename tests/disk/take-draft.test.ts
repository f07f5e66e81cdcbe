// Drafts of several programs at once: each its own, and each is found again by who comes for the same.

import { readdirSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { realDisk } from '../../src/disk/real-disk.ts';
import { takeDraft } from '../../src/disk/take-draft.ts';
import { scratchFolder } from './scratch-folder.ts';

async function taken(folder: string, about: string | null = null) {
	const draft = await takeDraft(realDisk, { folder, name: 'new-show', about });
	onTestFinished(() => draft.release());
	return draft;
}

test('two at once have one each, and neither sees what the other keeps', async () => {
	const folder = scratchFolder();
	const one = await taken(folder);
	one.keep({ answers: 'one' });
	const other = await taken(folder);
	expect(other.kept()).toEqual({});
	other.keep({ answers: 'other' });
	expect(one.kept()).toEqual({ answers: 'one' });
	one.release();
	other.release();
	const next = await taken(folder);
	const last = await taken(folder);
	expect([next.kept().answers, last.kept().answers]).toEqual(['one', 'other']);
});

test('the one about the same file comes first, and is offered to others where there is no better', async () => {
	const folder = scratchFolder();
	const friday = await taken(folder, '/a/friday.yaml');
	const saturday = await taken(folder, '/a/saturday.yaml');
	friday.keep({ answers: 'friday' });
	saturday.keep({ answers: 'saturday' });
	friday.release();
	saturday.release();
	const again = await taken(folder, '/a/saturday.yaml');
	expect(again.kept().answers).toBe('saturday');
	expect((await taken(folder)).kept().answers).toBe('friday');
});

test('leaves no file once nothing is kept', async () => {
	const folder = scratchFolder();
	const one = await taken(folder, '/a/friday.yaml');
	one.keep({ answers: 'friday' });
	one.keep({});
	one.release();
	expect(readdirSync(folder)).toEqual([]);
});
