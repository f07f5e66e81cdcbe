// What a reader is told as a page, in whatever form it is then written.

export type PageTable = {
	readonly names: readonly string[];
	readonly rows: readonly (readonly string[])[];
};

export type PagePart = {
	readonly title: string | null;
	readonly lines: readonly string[];
	readonly items: readonly string[];
	readonly table: PageTable | null;
};

export type ReaderPage = {
	readonly heading: string;
	readonly place: string | null;
	readonly parts: readonly PagePart[];
};
