// Renaming on Windows, where a file that anybody reads at this moment, such as a virus scanner, keeps its name for a
// while; elsewhere a file has any new name at once.

/** What Windows says of a file that is open elsewhere (from memory of its error codes as Node passes them on). */
const BUSY: ReadonlySet<string> = new Set(['EPERM', 'EACCES', 'EBUSY']);

/** Waits between the tries, in milliseconds: half a second in all. */
const WAITS_MS = [10, 20, 40, 80, 150, 200];

type Ways = {
	readonly rename: (from: string, to: string) => void;
	readonly wait: (ms: number) => void;
	readonly platform: string;
};

/** Renames, on Windows again for a moment where the file is held; throws what the last try threw. */
export function patientRename({ rename, wait, platform }: Ways): Ways['rename'] {
	if (platform !== 'win32') return rename;
	return (from, to) => {
		for (const ms of WAITS_MS) {
			try {
				return rename(from, to);
			} catch (error) {
				if (!(error instanceof Error && 'code' in error && BUSY.has(String(error.code))))
					throw error;
				wait(ms);
			}
		}
		rename(from, to);
	};
}
