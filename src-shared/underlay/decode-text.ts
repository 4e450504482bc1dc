/**
 * Turns bytes into text. The encoding is a label of the WHATWG Encoding Standard, e.g. "windows-1252".
 * Handed to readers by whoever runs them: the language alone has no decoder.
 * @returns undefined when the encoding is not known
 */
export type DecodeText = (bytes: Uint8Array, encoding: string) => string | undefined;
