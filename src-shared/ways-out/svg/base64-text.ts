const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes as base64 text (RFC 4648). */
export function base64Text(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const group = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const letters = [18, 12, 6, 0].map((shift) => LETTERS.charAt((group >> shift) & 63));
    out.push(letters.slice(0, Math.min(4, bytes.length - i + 1)).join('').padEnd(4, '='));
  }
  return out.join('');
}
