// What a program asked of the system, as strace(1) wrote it down: the calls that change files or make them
// last, in their order, each with its bytes.

/** One call, or one of its ends where another thread's came between. */
export type TracedCall = {
	readonly thread: string;
	readonly name: string;
	/** `begins` and `ends` for the two halves of a call. */
	readonly part: 'whole' | 'begins' | 'ends';
	/** Paths and bytes, as they are. */
	readonly texts: readonly Buffer[];
	readonly numbers: readonly number[];
	readonly flags: string;
	/** What it gave back; below 0 where it failed, null for the first half. */
	readonly result: number | null;
};

/** The flags with which strace writes down what is read here. */
export const TRACE_FLAGS = [
	...['-f', '-qq', '-xx', '-s', '1000000'],
	...['-e', 'trace=openat,write,fdatasync,fsync,rename,mkdir,unlink,ftruncate'],
];

/** The calls of a whole trace; of a call in two halves the first has its words, the second its result. */
export function tracedCalls(trace: string): TracedCall[] {
	const begun = new Map<string, string>();
	return trace.split('\n').flatMap((line) => {
		const [, thread = '', rest = ''] = /^(\d+) +(.*)$/.exec(line) ?? [];
		const resumed = /^<\.\.\. \w+ resumed>(.*)$/.exec(rest);
		if (resumed) {
			const words = begun.get(thread) ?? '';
			begun.delete(thread);
			return call(thread, `${words}${resumed[1]}`, 'ends');
		}
		if (!rest.endsWith('<unfinished ...>')) return call(thread, rest, 'whole');
		const words = rest.slice(0, -'<unfinished ...>'.length);
		begun.set(thread, words);
		return call(thread, words, 'begins');
	});
}

function call(thread: string, words: string, part: TracedCall['part']): TracedCall[] {
	const [, name, args = '', result] =
		/^(\w+)\((.*?)(?:\) *= (-?\d+).*)?$/.exec(words.replaceAll('\n', '')) ?? [];
	if (name === undefined) return [];
	const texts = [...args.matchAll(/"((?:\\x[0-9a-f]{2})*)"/g)].map(([, hex = '']) =>
		Buffer.from(hex.replaceAll('\\x', ''), 'hex'),
	);
	const plain = args.replaceAll(/"[^"]*"/g, '');
	const numbers = [...plain.matchAll(/(?<![\w|])\d+/g)].map(([digits]) => Number(digits));
	const isOver = result !== undefined;
	return [
		{ thread, name, part, texts, numbers, flags: plain, result: isOver ? Number(result) : null },
	];
}
