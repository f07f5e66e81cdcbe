// Several nights as a page of tables, in whatever form it is then written.

import { OWN_TIMES } from '../showfile/own-times.ts';
import * as say from '../words/history.ts';
import { timeName } from '../words/own-times.ts';
import type { NightsReport } from './nights-report.ts';
import type { PagePart, PageTable, ReaderPage } from './reader-page.ts';

/** Plain texts; whoever writes them into a form escapes them. */
export function nightsPage(report: NightsReport): ReaderPage {
	const { nights } = report;
	const [from, to] = [nights[0]?.day ?? '', nights.at(-1)?.day ?? ''];
	const titles = say.NIGHTS_SECTIONS;
	return {
		heading: say.nightsTitle(nights.length, from, to),
		place: null,
		parts: [
			part(titles.nights, nightTable(report)),
			part(titles.strings, stringTable(report), [say.CHANCE_MEANS]),
			part(titles.gaps, gapTable(report)),
			part(titles.hours, hourTable(report)),
			part(titles.times, timeTable(report)),
		],
	};
}

function part(title: string, table: PageTable, lines: readonly string[] = []): PagePart {
	return table.rows.length === 0
		? { title, lines: [say.NONE], items: [], table: null }
		: { title, lines, items: [], table };
}

function nightTable({ nights }: NightsReport): PageTable {
	return {
		names: say.NIGHTS_TABLE,
		rows: nights.map((one) => [
			one.day,
			one.title,
			String(one.songs),
			String(one.breaks),
			say.secondsText(one.soundSeconds?.median ?? null),
			say.secondsText(one.soundSeconds?.longest ?? null),
			say.outOf(one.handOversLate, one.handOvers),
			String(one.tightInPlan),
			String(one.tightInTruth),
		]),
	};
}

function stringTable({ strings }: NightsReport): PageTable {
	return {
		names: say.STRINGS_TABLE,
		rows: strings.map(({ chance, ...one }) => [
			one.shown,
			one.string === null ? say.NOT_SAID : String(one.string),
			String(one.breaks),
			say.outOf(one.nightsBroken, one.nightsUsed),
			say.chanceWords(chance.low, chance.high),
		]),
	};
}

function gapTable({ gaps }: NightsReport): PageTable {
	return {
		names: say.GAPS_TABLE,
		rows: gaps.map((one) => [
			one.day,
			one.title,
			String(one.handOvers),
			say.secondsText(one.plannedSeconds),
			say.secondsText(one.seconds),
			say.secondsText(one.plannedSeconds - one.neededSeconds),
			say.secondsText(one.leftSeconds),
			one.isLate ? say.YES : '',
		]),
	};
}

function hourTable({ hours }: NightsReport): PageTable {
	return {
		names: say.HOURS_TABLE,
		rows: hours.map((one) => [one.shown, say.hoursText(one.hours, one.isAtLeast)]),
	};
}

function timeTable({ times }: NightsReport): PageTable {
	return {
		names: say.TIMES_TABLE.slice(0, -1),
		rows: times.map(({ work, count, medianSeconds, highSeconds, usedSeconds }) => {
			const named = OWN_TIMES.find(({ name }) => name === work);
			return [
				named === undefined ? work : timeName(named),
				String(count),
				medianSeconds === null ? say.TOO_FEW : say.secondsText(medianSeconds),
				say.secondsText(highSeconds),
				say.secondsText(usedSeconds),
			];
		}),
	};
}
