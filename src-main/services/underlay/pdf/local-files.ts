import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** Folders of the PDF library that readers may take a file from. */
type Folder = 'cmaps' | 'standard_fonts' | 'wasm';

const libraryFolder = (): string => dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));

/** Reads a file that ships with the PDF library. The name may come out of a hostile document: only plain names pass. */
async function shippedFile(folder: Folder, name: string): Promise<Uint8Array> {
  if (!/^[\w-]+(\.\w+)?$/.test(name)) throw new Error('not a plain file name');
  return new Uint8Array(await readFile(join(libraryFolder(), folder, name)));
}

/** Tables of character codes. */
export class LocalCharacterMaps {
  async fetch({ name }: { name: string }): Promise<{ cMapData: Uint8Array; isCompressed: boolean }> {
    return { cMapData: await shippedFile('cmaps', `${name}.bcmap`), isCompressed: true };
  }
}

/** Widths of the typefaces that a document need not embed. */
export class LocalTypefaces {
  fetch({ filename }: { filename: string }): Promise<Uint8Array> {
    return shippedFile('standard_fonts', filename);
  }
}

/** Unpackers of rare kinds of pictures. */
export class LocalUnpackers {
  fetch({ filename }: { filename: string }): Promise<Uint8Array> {
    return shippedFile('wasm', filename);
  }
}
