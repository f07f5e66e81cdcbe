// What the optional library for ports by name declares of its outputs, word for word as version 3.8.1 has it in
// dist/output.d.ts; `tests/rig/midi-names.test.ts` holds it against the library where that is installed.

export declare class DeclaredOutput {
	constructor();
	closePort(): void;
	destroy(): void;
	getPortCount(): number;
	getPortName(port: number): string;
	isPortOpen(): boolean;
	openPort(port: number): void;
	openPortByName(name: string): void;
	openVirtualPort(port: string): void;
	send(message: number[] | Buffer): void;
	sendMessage(message: number[] | Buffer): void;
}
