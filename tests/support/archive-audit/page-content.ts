import { PDFArray, type PDFDict, PDFRef, PDFStream } from '@cantoo/pdf-lib';
import { type ArchiveFile, contentOf, dictAt, entry, nameAt } from './archive-file.ts';

/** Operators of a page or of a drawing that stands by itself, with the resources that they name. */
export interface Content {
  readonly where: string;
  readonly resources: PDFDict | undefined;
  /** Numbers, names, texts and operators in turn, texts in their brackets. */
  readonly tokens: readonly string[];
}

const TOKEN = /\((?:\\[\s\S]|[^\\()])*\)|<<|>>|<[\da-fA-F\s]*>|\/[^\s()<>[\]{}/%]*|[[\]]|[^\s()<>[\]{}/%]+/g;

/** Everything that is painted: pages, and forms that pages, fields and others show. */
export function contentsOf({ document, streams }: ArchiveFile): Content[] {
  const pages = document.getPages().map(({ node }, i): Content => {
    const contents = entry(node, 'Contents');
    const parts = contents instanceof PDFArray ? contents.asArray().map((each) => (each instanceof PDFRef ? document.context.lookup(each) : each)) : [contents];
    const painted = parts.flatMap((part) => (part instanceof PDFStream ? [contentOf(part).toString('latin1')] : []));
    return { where: `page ${i + 1}`, resources: node.Resources(), tokens: painted.join('\n').match(TOKEN) ?? [] };
  });
  const forms = streams
    .filter(({ dict }) => nameAt(dict, 'Subtype') === 'Form')
    .map((stream): Content => ({ where: 'a drawing by itself', resources: dictAt(stream.dict, 'Resources'), tokens: contentOf(stream).toString('latin1').match(TOKEN) ?? [] }));
  return [...pages, ...forms];
}
