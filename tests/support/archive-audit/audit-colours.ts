import { PDFDict, PDFStream } from '@cantoo/pdf-lib';
import { type Audit, arrayAt, contentOf, dictAt, entry, has, nameAt, numberAt, streamAt } from './archive-file.ts';
import { contentsOf } from './page-content.ts';

const CLASSES = ['prtr', 'mntr', 'scnr', 'spac'];
const COMPONENTS: Readonly<Record<string, number>> = { 'RGB ': 3, CMYK: 4, 'GRAY': 1, 'Lab ': 3 };
const INTENTS = ['RelativeColorimetric', 'AbsoluteColorimetric', 'Perceptual', 'Saturation'];
const BLENDS = ['Normal', 'Compatible', 'Multiply', 'Screen', 'Overlay', 'Darken', 'Lighten', 'ColorDodge', 'ColorBurn', 'HardLight', 'SoftLight', 'Difference', 'Exclusion', 'Hue', 'Saturation', 'Color', 'Luminosity'];
const OPERATORS = new Set("b B b* B* BDC BI BMC BT BX c cm CS cs d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j J K k l m M MP n q Q re RG rg ri s S SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W* y ' \"".split(' '));
/** Deepest nesting of q and Q. ISO 19005-3, 6.1.13. */
const DEEPEST = 28;

/** Space of colours that the file states for colours without a profile of their own; undefined without one. */
function statedSpace(catalog: PDFDict, faults: string[]): string | undefined {
  const intents = arrayAt(catalog, 'OutputIntents').filter((each) => each instanceof PDFDict);
  const intent = intents.find((each) => nameAt(each, 'S') === 'GTS_PDFA1');
  const profile = streamAt(intent, 'DestOutputProfile');
  if (!profile) {
    faults.push('6.2.3: no output intent with a profile says what the colours mean');
    return undefined;
  }
  if (new Set(intents.map((each) => streamAt(each, 'DestOutputProfile'))).size > 1) faults.push('6.2.3: output intents have different profiles');
  const content = contentOf(profile);
  // ICC.1:2010: size at 0, version at 8, class at 12, space at 16, signature at 36.
  const [space, kind] = [content.toString('latin1', 16, 20), content.toString('latin1', 12, 16)];
  const isWhole = content.length >= 128 && content.readUInt32BE(0) === content.length && content.toString('latin1', 36, 40) === 'acsp' && (content[8] ?? 9) <= 4 && CLASSES.includes(kind);
  if (!isWhole) faults.push('6.2.3: the profile of the output intent is none of ICC up to version 4');
  if (numberAt(profile.dict, 'N') !== COMPONENTS[space]) faults.push('6.2.3: the profile has another number of colours than the file says');
  return space;
}

/** Colours, states of painting, pictures and operators (6.2). */
export const auditColours: Audit = (file) => {
  const faults = new Set<string>();
  const stated: string[] = [];
  const space = statedSpace(file.document.catalog, stated);
  const seesThrough = (dict: PDFDict): boolean => ['CA', 'ca'].some((name) => (numberAt(dict, name) ?? 1) < 1) || (has(dict, 'SMask') && nameAt(dict, 'SMask') !== 'None');
  for (const dict of file.dictionaries) {
    if (has(dict, 'TR') || (has(dict, 'TR2') && nameAt(dict, 'TR2') !== 'Default') || has(dict, 'HTP')) faults.add('6.2.5: a state of painting changes how tones come out');
    const blend = nameAt(dict, 'BM');
    if (blend !== undefined && !BLENDS.includes(blend)) faults.add(`6.2.10: colours are mixed in a way of its own (${blend})`);
    if (seesThrough(dict) && space === undefined && !file.document.getPages().every(({ node }) => dictAt(dictAt(node, 'Group'), 'CS') ?? nameAt(dictAt(node, 'Group'), 'CS'))) faults.add('6.2.10: something is seen through and nothing says in which colours that is mixed');
    const intent = nameAt(dict, 'RI') ?? nameAt(dict, 'Intent');
    if (intent !== undefined && has(dict, 'Width') && !INTENTS.includes(intent)) faults.add('6.2.6: a picture is rendered in an unknown way');
    const subtype = nameAt(dict, 'Subtype');
    if (subtype === 'PS' || has(dict, 'OPI') || (subtype === 'Form' && (has(dict, 'PS') || has(dict, 'Ref')))) faults.add('6.2.9: a drawing by itself calls for PostScript or for another file');
    if (subtype === 'Image' && (has(dict, 'Alternates') || String(entry(dict, 'Interpolate')) === 'true')) faults.add('6.2.8: a picture has others in its place or is smoothed');
    const colours = nameAt(dict, 'ColorSpace') ?? nameAt(dict, 'CS');
    if (colours === 'DeviceCMYK' && space !== 'CMYK') faults.add('6.2.4.3: there are printing colours without their profile');
    if (colours === 'DeviceRGB' && space !== 'RGB ') faults.add('6.2.4.3: there are screen colours without their profile');
    if (colours === 'DeviceGray' && space === undefined) faults.add('6.2.4.3: there are greys without a profile');
  }
  for (const { where, resources, tokens } of contentsOf(file)) {
    let depth = 0;
    let marked = 0;
    tokens.forEach((token, i) => {
      if (/^[/(<[\]>+\-.\d]/.test(token) || ['true', 'false', 'null'].includes(token)) return;
      if (!OPERATORS.has(token)) faults.add(`6.2.2: ${where} has an operator ${token} that nobody knows`);
      if (token === 'q') depth += 1;
      if (token === 'Q') depth -= 1;
      if (depth > DEEPEST) faults.add(`6.1.13: states of painting lie more than ${DEEPEST} deep on ${where}`);
      if (depth < 0) faults.add(`6.2.2: ${where} goes back further than it began`);
      if (token === 'BDC' || token === 'BMC') marked += 1;
      if (token === 'EMC') marked -= 1;
      if (marked < 0) faults.add(`6.2.2: marked content ends on ${where} that never began`);
      if ((token === 'rg' || token === 'RG') && space !== 'RGB ') faults.add('6.2.4.3: there are screen colours without their profile');
      if ((token === 'k' || token === 'K') && space !== 'CMYK') faults.add('6.2.4.3: there are printing colours without their profile');
      if ((token === 'g' || token === 'G') && space === undefined) faults.add('6.2.4.3: there are greys without a profile');
      const named = { gs: 'ExtGState', Do: 'XObject', sh: 'Shading' }[token];
      if (named && !entry(dictAt(resources, named), tokens[i - 1]?.slice(1) ?? '')) faults.add(`6.2.2: ${where} uses ${tokens[i - 1]} and does not name it`);
      if (token === 'BDC' && tokens[i - 2] === '/OC' && !dictAt(dictAt(resources, 'Properties'), tokens[i - 1]?.slice(1) ?? '')) faults.add(`6.9: ${where} uses a layer ${tokens[i - 1]} that it does not name`);
    });
    if (depth !== 0 || marked !== 0) faults.add(`6.2.2: ${where} ends with something still open`);
  }
  if (file.streams.some((stream) => stream instanceof PDFStream && nameAt(stream.dict, 'Type') === 'XObject' && nameAt(stream.dict, 'Subtype') === undefined)) faults.add('6.2.2: a drawing does not say what it is');
  return [...stated, ...faults];
};
