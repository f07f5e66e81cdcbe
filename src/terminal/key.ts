// What the input layer gives back once bytes have become presses: the one shape that the screen,
// the prompts and the tests share. Apart from the decoder so that nothing else needs to know bytes.

/**
 * One press. Named keys: `space`, `enter`, `esc`, `tab`, `backspace`, `delete`, `up`, `down`,
 * `left`, `right`, `pageup`, `pagedown`, `home`, `end`, `f1`, and `ctrl-a`, `ctrl-e`, `ctrl-k`,
 * `ctrl-u`, `ctrl-w`, which edit text. Anything else is the single grapheme
 * as it was typed, its case kept.
 */
export type Key = string;

/** What happened at the keyboard. `atMs` is the moment of the read, on the clock passed in; of keys
 * that had to wait for it, when they may have been pressed. */
export type InputEvent =
	| { readonly kind: 'key'; readonly key: Key; readonly atMs: number }
	/** Text from a marked paste, raw but for Ctrl-C: clean it before it is shown. At most 64 KB. */
	| { readonly kind: 'paste'; readonly text: string; readonly atMs: number }
	/** More keys at once than hands can press: `count` keys that are not commands. */
	| {
			readonly kind: 'burst';
			readonly count: number;
			/** What they would have typed, raw (enter as a newline), for a text field. At most 64 KB. */
			readonly text: string;
			readonly atMs: number;
	  }
	/** Ctrl-C, also from inside a paste. */
	| { readonly kind: 'interrupt'; readonly atMs: number };
