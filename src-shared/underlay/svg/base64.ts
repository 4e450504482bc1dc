const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const VALUES = new Int16Array(128).fill(-1);
for (let i = 0; i < LETTERS.length; i += 1) VALUES[LETTERS.charCodeAt(i)] = i;

/** Bytes of base64 text (RFC 4648); white space is passed over. @returns undefined when it is none */
export function base64Bytes(text: string): Uint8Array | undefined {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let at = 0;
  let bits = 0;
  let held = 0;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 61) break;
    if (code <= 32) continue;
    const value = code < 128 ? (VALUES[code] ?? -1) : -1;
    if (value < 0) return undefined;
    held = ((held << 6) | value) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at] = (held >> bits) & 255;
      at += 1;
    }
  }
  return bytes.slice(0, at);
}
