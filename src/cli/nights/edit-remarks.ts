// The editable parts of a report, in an editor or asked line by line; kept beside the night. What of Node starts an
// editor or asks is loaded then: most reports are only read.

import { join } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { diskErrorCode } from '../../disk/disk.ts';
import { ensureFolder } from '../../disk/folders.ts';
import { whyNotOwn } from '../../disk/own-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { keepRemarks, readRemarks, remarksPath } from '../../disk/remarks-file.ts';
import { replaceWhole } from '../../disk/write-whole.ts';
import type { NightReport } from '../../report/night-report.ts';
import {
	type RemarkField,
	readRemarksText,
	remarkFields,
	remarksText,
	remarksWith,
} from '../../report/remarks-text.ts';
import { diskFaultWords, diskTrouble } from '../../words/disk.ts';
import {
	editorFailed,
	editStays,
	NO_EDITOR,
	REMARKS,
	REMARKS_FAULTS,
	SET_EDITOR,
} from '../../words/report-remarks.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { tellProblems } from '../tell-problems.ts';

/** The folder of nights and the night. */
export type RemarkedNight = { readonly folder: string; readonly night: string };

type Written = ReadonlyMap<string, string>;

/** Has the remarks written, and keeps them; gives the exit code. */
export async function editRemarks(
	report: NightReport,
	{ folder, night }: RemarkedNight,
	io: Io,
): Promise<number> {
	const place = { disk: realDisk, folder, night };
	const { remarks, problem } = readRemarks(place);
	if (problem) {
		io.complain(`${cleanText(diskFaultWords(problem))}\n`);
		return EXIT.unusable;
	}
	const fields = remarkFields(report, remarks);
	const editor = io.env.VISUAL || io.env.EDITOR;
	const draft = join(folder, `${night}.remarks-draft`);
	const isAsked = !editor && io.isInputTerminal && io.isOutputTerminal;
	if (!editor && !isAsked) {
		return tellProblems([{ code: 'no-editor', what: NO_EDITOR, hint: SET_EDITOR }], io);
	}
	const written = await (editor ? inEditor(editor, { draft, fields }, io) : asked(fields, io));
	if (typeof written === 'number') return written;
	const leaveDraft = editor ? () => removeDraft(draft) : () => {};
	if (fields.every(({ heading, text }) => (written.get(heading) ?? '') === text)) {
		leaveDraft();
		io.write(`${REMARKS.unchanged}\n`);
		return EXIT.fine;
	}
	const fault = keepRemarks(place, remarksWith(report, remarks, written));
	if (fault) {
		io.complain(`${cleanText(diskFaultWords(fault))}\n`);
		return EXIT.notKept;
	}
	leaveDraft();
	io.write(`${cleanText(REMARKS.kept(remarksPath(place)))}\n`);
	return EXIT.fine;
}

/** What was written, or the exit code where it cannot be used; then the draft stays. */
async function inEditor(
	editor: string,
	{ draft, fields }: { readonly draft: string; readonly fields: readonly RemarkField[] },
	io: Io,
): Promise<Written | number> {
	const { spawnSync } = await import('node:child_process');
	try {
		ensureFolder(realDisk, join(draft, '..'));
		const trouble = whyNotOwn(realDisk, draft, 'file');
		if (trouble !== null) return fileProblem(draft, trouble, io);
		// One that is there was left by a text that could not be used: it goes on from that. Half of one would cost
		// the remarks that are not in it.
		const isFree = () => (realDisk.stat(draft)?.sizeBytes ?? 0) === 0;
		const bytes = Buffer.from(remarksText(fields));
		if (isFree()) replaceWhole(realDisk, { path: draft, bytes, isStill: isFree });
	} catch (error) {
		return fileProblem(draft, diskErrorCode(error), io);
	}
	// Read by a shell, so that an editor can have options; no file of Windows has a quote in its name.
	const ended =
		process.platform === 'win32'
			? spawnSync(`${editor} "${draft}"`, { stdio: 'inherit', shell: true })
			: spawnSync('/bin/sh', ['-c', `${editor} "$1"`, 'sh', draft], { stdio: 'inherit' });
	if (ended.status !== 0) {
		const hint = editStays(cleanText(draft));
		const what = editorFailed(cleanText(editor));
		return tellProblems([{ code: 'editor-failed', what, hint }], io);
	}
	let text: string;
	try {
		const trouble = whyNotOwn(realDisk, draft, 'file');
		if (trouble !== null) return fileProblem(draft, trouble, io);
		text = Buffer.from(realDisk.read(draft)).toString('utf8');
	} catch (error) {
		return fileProblem(draft, diskErrorCode(error), io);
	}
	const headings = fields.map(({ heading }) => heading);
	const read = readRemarksText(text, headings);
	if ('texts' in read) return read.texts;
	const { line, what, found } = read.fault;
	return tellProblems(
		[
			{
				code: 'bad-remark',
				what: REMARKS_FAULTS[what],
				where: { file: cleanText(draft), line },
				found,
				...(what === 'heading' && { expected: headings.join(', ') }),
				hint: editStays(cleanText(draft)),
			},
		],
		io,
	);
}

function fileProblem(path: string, trouble: string, io: Io): number {
	return tellProblems(
		[{ code: 'file-unusable', what: diskTrouble(trouble), where: { file: cleanText(path) } }],
		io,
	);
}

function removeDraft(path: string): void {
	try {
		if (realDisk.stat(path) !== null) realDisk.remove(path);
	} catch (error) {
		diskErrorCode(error);
	}
}

/** A question for each field; enter keeps what is there. */
async function asked(fields: readonly RemarkField[], io: Io): Promise<Written | number> {
	const { createInterface } = await import('node:readline/promises');
	const asking = createInterface({ input: process.stdin, output: process.stdout });
	const texts = new Map(fields.map(({ heading, text }) => [heading, text]));
	io.write(`${REMARKS.howToAsk}\n`);
	try {
		for (const { heading, about, text } of fields) {
			const typed = (await asking.question(cleanText(REMARKS.ask(about, text)))).trim();
			if (typed !== '') texts.set(heading, typed === '-' ? '' : typed);
		}
	} catch {
		// The input ended, or Ctrl-C: what was answered counts, the rest stays.
	} finally {
		asking.close();
	}
	return texts;
}
