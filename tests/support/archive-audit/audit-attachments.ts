import type { PDFDict } from '@cantoo/pdf-lib';
import { type Audit, arrayAt, dictAt, entry, has, nameAt, streamAt, textAt } from './archive-file.ts';

const RELATIONSHIPS = ['Source', 'Data', 'Alternative', 'Supplement', 'Unspecified', 'EncryptedPayload', 'FormData', 'Schema'];

/** Attached files: named twice, of a known kind, dated, and said what they are to the document (6.8). */
export const auditAttachments: Audit = ({ document, dictionaries, streams }) => {
  const faults = new Set<string>();
  const specifications = dictionaries.filter((dict) => dictAt(dict, 'EF') !== undefined);
  const associated = new Set(dictionaries.flatMap((dict) => arrayAt(dict, 'AF')));
  const held = new Set<PDFDict>();
  for (const specification of specifications) {
    const name = textAt(specification, 'UF') ?? textAt(specification, 'F');
    if (!has(specification, 'F') || !has(specification, 'UF')) faults.add('6.8: an attached file lacks one of its two names');
    if (!RELATIONSHIPS.includes(nameAt(specification, 'AFRelationship') ?? '')) faults.add(`6.8: nothing says what ${name} is to the document`);
    if (!associated.has(specification)) faults.add(`6.8: ${name} belongs to nothing`);
    const stream = streamAt(dictAt(specification, 'EF'), 'F') ?? streamAt(dictAt(specification, 'EF'), 'UF');
    if (!stream) {
      faults.add(`6.8: ${name} is not there`);
      continue;
    }
    held.add(stream.dict);
    if (!/^[\w.+-]+\/[\w.+-]+$/.test(nameAt(stream.dict, 'Subtype') ?? '')) faults.add(`6.8: nothing says of which kind ${name} is`);
    if (textAt(dictAt(stream.dict, 'Params'), 'ModDate') === undefined) faults.add(`6.8: nothing says of when ${name} is`);
  }
  for (const { dict } of streams) if (nameAt(dict, 'Type') === 'EmbeddedFile' && !held.has(dict)) faults.add('6.8: a file is held that no name leads to');
  if (specifications.length > 0 && !dictAt(dictAt(document.catalog, 'Names'), 'EmbeddedFiles')) faults.add('6.8: the list of attached files is missing');
  for (const dict of dictionaries) if (nameAt(dict, 'Type') === 'Filespec' && entry(dict, 'EF') === undefined && nameAt(dict, 'FS') !== 'URL') faults.add('6.8: a file is named that is not in this one');
  return [...faults];
};
