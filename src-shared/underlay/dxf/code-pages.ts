import type { DecodeText } from '../decode-text.ts';
import { asciiOf } from './parse-number.ts';
import type { ReadText } from './records.ts';

/** Upper halves of the DOS code pages that decoders of the web do not know; they agree with the Unicode Consortium's mapping tables CP437, CP850 and CP852. */
const DOS_UPPER: Readonly<Record<string, string>> = {
  '437':
    'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0',
  '850':
    'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈıÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u00ad±‗¾¶§÷¸°¨·¹³²■\u00a0',
  '852':
    'ÇüéâäůćçłëŐőîŹÄĆÉĹĺôöĽľŚśÖÜŤťŁ×čáíóúĄąŽžĘę¬źČş«»░▒▓│┤ÁÂĚŞ╣║╗╝Żż┐└┴┬├─┼Ăă╚╔╩╦╠═╬¤đĐĎËďŇÍÎě┘┌█▄ŢŮ▀ÓßÔŃńňŠšŔÚŕŰýÝţ´\u00ad˝˛ˇ˘§÷¸°¨˙űŘř■\u00a0',
};

/** Encoding labels by the number in the code page's name. */
const LABELS: Readonly<Record<string, string>> = {
  '866': 'ibm866',
  '874': 'windows-874',
  '932': 'shift_jis',
  '936': 'gbk',
  '949': 'euc-kr',
  '950': 'big5',
  '1250': 'windows-1250',
  '1251': 'windows-1251',
  '1252': 'windows-1252',
  '1253': 'windows-1253',
  '1254': 'windows-1254',
  '1255': 'windows-1255',
  '1256': 'windows-1256',
  '1257': 'windows-1257',
  '1258': 'windows-1258',
};

/** First file version whose text is always UTF-8. */
const FIRST_UTF8_VERSION = 'AC1021';

function isAscii(bytes: Uint8Array): boolean {
  for (const byte of bytes) if (byte >= 128) return false;
  return true;
}

const fromUpperHalf = (bytes: Uint8Array, upper: string): string => {
  let text = '';
  for (const byte of bytes) text += byte < 128 ? String.fromCharCode(byte) : (upper[byte - 128] ?? '?');
  return text;
};

/**
 * How text of a DXF file is decoded.
 * @param version   file version as the header has it, e.g. "AC1018"; empty when it has none
 * @param codePage  code page as the header has it, e.g. "ANSI_1252"; empty when it has none
 */
export function textReaderFor(version: string, codePage: string, decode: DecodeText): ReadText {
  const number = /(\d+)\s*$/.exec(codePage)?.[1] ?? '1252';
  const upper = DOS_UPPER[number];
  const label = version >= FIRST_UTF8_VERSION ? 'utf-8' : (LABELS[number] ?? 'windows-1252');
  return (bytes) => {
    if (isAscii(bytes)) return asciiOf(bytes, 0, bytes.length);
    if (upper && label !== 'utf-8') return fromUpperHalf(bytes, upper);
    return decode(bytes, label) ?? asciiOf(bytes, 0, bytes.length);
  };
}

/** Encoding label of the multi-byte code that `\M+n` marks, n = 1 … 5. */
export const multiByteLabel = (digit: string): string | undefined =>
  ({ '1': 'shift_jis', '2': 'big5', '3': 'euc-kr', '4': 'euc-kr', '5': 'gbk' })[digit];
