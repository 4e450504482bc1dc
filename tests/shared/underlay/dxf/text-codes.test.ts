import { describe, expect, test } from 'vitest';
import { textReaderFor } from '#shared/underlay/dxf/code-pages';
import { plainLine, plainParagraph } from '#shared/underlay/dxf/text-codes';
import { decode } from '../../../support/underlay.ts';

describe('single lines', () => {
  test.each([
    ['%%c20 %%p0.5 45%%d', '⌀20 ±0.5 45°'],
    ['%%uROOM%%u', 'ROOM'],
    ['%%176 100%%%', '° 100%'],
    ['\\U+00E4rzte', 'ärzte'],
    ['\\M+182A0', 'あ'],
  ])('%j reads %j', (source, text) => expect(plainLine(source, decode)).toBe(text));
});

describe('paragraphs', () => {
  test.each([
    ['ONE\\PTWO', ['ONE', 'TWO']],
    ['{\\fSans|b0|i0|c0|p34;ROOM} 12', ['ROOM 12']],
    ['\\A1;3\\S1/2;"', ['3 1/2"']],
    ['\\H0.7x;\\S1#4; in', ['1/4 in']],
    ['{\\C1;\\LRED\\l}', ['RED']],
    ['a\\~b', ['a b']],
    ['\\\\ \\{x\\}', ['\\ {x}']],
    ['x^Iy^Jz', ['x y', 'z']],
    ['100%%d', ['100°']],
    ['\\pi-3,l3;LIST', ['LIST']],
  ])('%j reads %j', (source, lines) => expect(plainParagraph(source, decode)).toEqual(lines));

  test('a fraction after a whole number never runs into it', () => {
    expect(plainParagraph("10'-3{\\H0.7x;\\S1#2;}\"", decode)).toEqual(["10'-3 1/2\""]);
  });
});

describe('code pages', () => {
  const read = (version: string, page: string, ...bytes: number[]): string => textReaderFor(version, page, decode)(Uint8Array.from(bytes));
  test.each([
    ['AC1015', 'ANSI_1252', [0xe4, 0xdf], 'äß'],
    ['AC1015', 'ANSI_1250', [0xb9], 'ą'],
    ['AC1018', 'ANSI_1251', [0xcf, 0xeb, 0xe0, 0xed], 'План'],
    ['AC1009', 'DOS437', [0x84, 0xf8], 'ä°'],
    ['AC1009', 'dos850', [0x84, 0xf8], 'ä°'],
    ['AC1009', 'dos852', [0x88], 'ł'],
    ['AC1015', 'ANSI_932', [0x82, 0xa0], 'あ'],
    ['AC1015', 'ANSI_936', [0xbf, 0xd5], '空'],
    ['AC1021', 'ANSI_1252', [0xc3, 0xa4], 'ä'],
    ['', '', [0xe9], 'é'],
    ['AC1015', 'nonsense', [0xe9], 'é'],
  ])('%s %s', (version, page, bytes, text) => expect(read(version, page, ...bytes)).toBe(text));

  test('the DOS pages have a character for each of their 128 upper bytes, none twice', () => {
    for (const page of ['437', '850', '852']) {
      const upper = [...read('AC1009', `DOS${page}`, ...Array.from({ length: 128 }, (_, i) => 128 + i))];
      expect(new Set(upper).size).toBe(128);
    }
  });
});
