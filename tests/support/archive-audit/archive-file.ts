import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber, type PDFObject, PDFRawStream, PDFRef, PDFStream, PDFString, decodePDFRawStream } from '@cantoo/pdf-lib';

/** A file as the audit reads it: its bytes, and every dictionary in it, those inside others as well. */
export interface ArchiveFile {
  readonly bytes: Uint8Array;
  readonly document: PDFDocument;
  readonly dictionaries: readonly PDFDict[];
  readonly streams: readonly PDFStream[];
  readonly strings: readonly (PDFString | PDFHexString)[];
  readonly names: readonly PDFName[];
}

/** Answers of one part of the audit: clause and what is wrong, one a fault. */
export type Audit = (file: ArchiveFile) => string[];

/** Reads a PDF for the audit, by a library that the program does not print with. */
export async function archiveFile(bytes: Uint8Array): Promise<ArchiveFile> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false, ignoreEncryption: true });
  const [dictionaries, streams, strings, names]: [PDFDict[], PDFStream[], (PDFString | PDFHexString)[], PDFName[]] = [[], [], [], []];
  const walk = (object: PDFObject | undefined): void => {
    if (object instanceof PDFStream) {
      streams.push(object);
      walk(object.dict);
    } else if (object instanceof PDFDict) {
      dictionaries.push(object);
      for (const [name, value] of object.entries()) {
        names.push(name);
        walk(value);
      }
    } else if (object instanceof PDFArray) for (const each of object.asArray()) walk(each);
    else if (object instanceof PDFString || object instanceof PDFHexString) strings.push(object);
    else if (object instanceof PDFName) names.push(object);
  };
  for (const [, object] of document.context.enumerateIndirectObjects()) walk(object);
  walk(document.context.trailerInfo.Info);
  return { bytes, document, dictionaries, streams, strings, names };
}

const key = (name: string): PDFName => PDFName.of(name);

/** An entry of a dictionary, wherever it is kept; undefined without one. */
export const entry = (dict: PDFDict | undefined, name: string): PDFObject | undefined => {
  const found = dict?.get(key(name));
  return found instanceof PDFRef ? dict?.context.lookup(found) : found;
};
export const dictAt = (dict: PDFDict | undefined, name: string): PDFDict | undefined => {
  const found = entry(dict, name);
  return found instanceof PDFDict ? found : found instanceof PDFStream ? found.dict : undefined;
};
export const arrayAt = (dict: PDFDict | undefined, name: string): PDFObject[] => {
  const found = entry(dict, name);
  return found instanceof PDFArray ? found.asArray().map((each, i) => found.lookup(i) ?? each) : [];
};
/** "DeviceRGB" of /DeviceRGB. */
export const nameAt = (dict: PDFDict | undefined, name: string): string | undefined => {
  const found = entry(dict, name);
  return found instanceof PDFName ? found.decodeText() : undefined;
};
export const numberAt = (dict: PDFDict | undefined, name: string): number | undefined => {
  const found = entry(dict, name);
  return found instanceof PDFNumber ? found.asNumber() : undefined;
};
export const textAt = (dict: PDFDict | undefined, name: string): string | undefined => {
  const found = entry(dict, name);
  return found instanceof PDFString || found instanceof PDFHexString ? found.decodeText() : undefined;
};
export const streamAt = (dict: PDFDict | undefined, name: string): PDFStream | undefined => {
  const found = entry(dict, name);
  return found instanceof PDFStream ? found : undefined;
};
export const has = (dict: PDFDict, name: string): boolean => dict.has(key(name));

/** The unpacked bytes of a stream. */
export const contentOf = (stream: PDFStream): Buffer => Buffer.from(stream instanceof PDFRawStream ? decodePDFRawStream(stream).decode() : stream.getContents());
