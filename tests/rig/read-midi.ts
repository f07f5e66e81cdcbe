// Bytes back into messages, by the MIDI 1.0 message table and nothing of the program's: status bytes have the upper
// bit, note on, note off and control change carry two data bytes, program change one, a clock none and may stand
// anywhere; running status is understood.

export type Heard = {
	readonly status: number;
	readonly channel: number;
	readonly data: readonly number[];
};

export function heardIn(bytes: readonly number[]): readonly Heard[] {
	const heard: Heard[] = [];
	let status = -1;
	let data: number[] = [];
	for (const byte of bytes) {
		if (byte === 0xf8) continue;
		if (byte >= 0xf0) throw new RangeError(`not expected: ${byte}`);
		if (byte >= 0x80) {
			if (data.length > 0) throw new RangeError('a message was cut');
			status = byte;
			continue;
		}
		if (status < 0) throw new RangeError('data without status');
		data.push(byte);
		const wants = status >> 4 === 0xc ? 1 : 2;
		if (data.length < wants) continue;
		heard.push({ status: status >> 4, channel: (status & 15) + 1, data });
		data = [];
	}
	if (data.length > 0) throw new RangeError('the last message was cut');
	return heard;
}

/** `01:02 text` lines of a tape as moments and bytes. */
export function tapeLines(
	text: string,
): readonly { readonly at: string; readonly bytes: readonly number[] }[] {
	return text
		.split('\n')
		.filter((line) => line !== '')
		.map((line) => {
			const [at = '', ...bytes] = line.split(' ');
			return { at, bytes: bytes.map((byte) => Number.parseInt(byte, 16)) };
		});
}
