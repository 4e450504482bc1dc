import type { DecodeText } from '../decode-text.ts';
import { multiByteLabel } from './code-pages.ts';

const SIGNS: Readonly<Record<string, string>> = { d: '°', c: '⌀', p: '±', '%': '%' };

/** Replaces `\U+XXXX` and `\M+nXXXX` by the characters they stand for. */
export const withUnicode = (text: string, decode: DecodeText): string =>
  text.includes('\\')
    ? text
        .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
        .replace(/\\M\+([1-5])([0-9A-Fa-f]{2})([0-9A-Fa-f]{2})/g, (whole, digit: string, high: string, low: string) => {
          const label = multiByteLabel(digit);
          const bytes = Uint8Array.of(Number.parseInt(high, 16), Number.parseInt(low, 16));
          return (label && decode(bytes, label)) ?? whole;
        })
    : text;

/** Plain text of a single-line text: `%%d` is °, `%%c` ⌀, `%%p` ±, `%%nnn` a character; underlining marks go; `^ ` is a caret. */
export const plainLine = (text: string, decode: DecodeText): string =>
  withUnicode(text, decode)
    .replace(/%%(\d{3})/g, (_, digits: string) => String.fromCharCode(Number(digits)))
    .replace(/%%([dcp%])/gi, (_, sign: string) => SIGNS[sign.toLowerCase()] ?? '')
    .replace(/%%[uok]/gi, '')
    .replace(/\^([I ])/g, (_, sign: string) => (sign === 'I' ? ' ' : '^'));

/** Plain lines of a paragraph text: fonts, colours, heights, stacks and groups are taken out. */
export function plainParagraph(text: string, decode: DecodeText): string[] {
  const source = withUnicode(text, decode).replace(/%%([dcp])/gi, (_, sign: string) => SIGNS[sign.toLowerCase()] ?? '');
  let out = '';
  for (let i = 0; i < source.length; i += 1) {
    const c = source[i] ?? '';
    if (c === '{' || c === '}') continue;
    if (c === '^') {
      const next = source[i + 1];
      if (next === 'J' || next === 'M') out += next === 'J' ? '\n' : '';
      else if (next === 'I') out += ' ';
      else if (next !== ' ') out += c;
      if (next === 'J' || next === 'M' || next === 'I' || next === ' ') i += 1;
      continue;
    }
    if (c !== '\\') {
      out += c;
      continue;
    }
    i += 1;
    const code = source[i] ?? '';
    if (code === 'P' || code === 'X') out += '\n';
    else if (code === 'N') out += '\n';
    else if (code === '~') out += ' ';
    else if (code === '\\' || code === '{' || code === '}') out += code;
    else if (code === 'S') {
      const end = source.indexOf(';', i);
      const stack = source.slice(i + 1, end < 0 ? undefined : end);
      // 3 over a stacked 1/2 must not read as 31/2.
      out += (/\d$/.test(out) ? ' ' : '') + stack.replace(/\^ ?|#|\//, '/');
      i = end < 0 ? source.length : end;
    } else if ('fFHWQTCcAp'.includes(code) && code !== '') {
      const end = source.indexOf(';', i);
      if (end >= 0) i = end;
    } else if (!'LlOoKk'.includes(code)) out += `\\${code}`;
  }
  return out.split('\n');
}
