// Several nights as a page of tables.

import { OWN_TIMES } from '../showfile/own-times.ts';
import * as say from '../words/history.ts';
import { timeName } from '../words/own-times.ts';
import { markdownTable } from './markdown-blocks.ts';
import { markdownText as text } from './markdown-text.ts';
import type { NightsReport } from './nights-report.ts';

/** The whole page, every text from outside escaped, a newline at its end. */
export function nightsMarkdown(report: NightsReport): string {
	const { nights } = report;
	const [from, to] = [nights[0]?.day ?? '', nights.at(-1)?.day ?? ''];
	return `${[
		`# ${say.nightsTitle(nights.length, from, to)}`,
		...section(say.NIGHTS_SECTIONS.nights, nightRows(report)),
		...section(say.NIGHTS_SECTIONS.strings, stringRows(report)),
		...section(say.NIGHTS_SECTIONS.gaps, gapRows(report)),
		...section(say.NIGHTS_SECTIONS.hours, hourRows(report)),
		...section(say.NIGHTS_SECTIONS.times, timeRows(report)),
	].join('\n')}\n`;
}

function section(title: string, lines: readonly string[]): string[] {
	return ['', `## ${title}`, '', ...(lines.length === 0 ? [say.NONE] : lines)];
}

function nightRows({ nights }: NightsReport): readonly string[] {
	return markdownTable(
		say.NIGHTS_TABLE,
		nights.map((one) => [
			one.day,
			text(one.title),
			String(one.songs),
			String(one.breaks),
			say.secondsText(one.soundSeconds?.median ?? null),
			say.secondsText(one.soundSeconds?.longest ?? null),
			say.outOf(one.handOversLate, one.handOvers),
			String(one.tightInPlan),
			String(one.tightInTruth),
		]),
	);
}

function stringRows({ strings }: NightsReport): readonly string[] {
	const table = markdownTable(
		say.STRINGS_TABLE,
		strings.map(({ chance, ...one }) => [
			text(one.shown),
			one.string === null ? say.NOT_SAID : String(one.string),
			String(one.breaks),
			say.outOf(one.nightsBroken, one.nightsUsed),
			say.chanceWords(chance.low, chance.high),
		]),
	);
	return table.length === 0 ? [] : [...table, '', say.CHANCE_MEANS];
}

function gapRows({ gaps }: NightsReport): readonly string[] {
	return markdownTable(
		say.GAPS_TABLE,
		gaps.map((one) => [
			one.day,
			text(one.title),
			String(one.handOvers),
			say.secondsText(one.plannedSeconds),
			say.secondsText(one.seconds),
			say.secondsText(one.plannedSeconds - one.neededSeconds),
			say.secondsText(one.leftSeconds),
			one.isLate ? say.YES : '',
		]),
	);
}

function hourRows({ hours }: NightsReport): readonly string[] {
	return markdownTable(
		say.HOURS_TABLE,
		hours.map((one) => [text(one.shown), say.hoursText(one.hours, one.isAtLeast)]),
	);
}

function timeRows({ times }: NightsReport): readonly string[] {
	return markdownTable(
		say.TIMES_TABLE.slice(0, -1),
		times.map(({ work, count, medianSeconds, highSeconds, usedSeconds }) => {
			const named = OWN_TIMES.find(({ name }) => name === work);
			return [
				named === undefined ? work : timeName(named),
				String(count),
				medianSeconds === null ? say.TOO_FEW : say.secondsText(medianSeconds),
				say.secondsText(highSeconds),
				say.secondsText(usedSeconds),
			];
		}),
	);
}
