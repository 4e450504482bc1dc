import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FontName } from '#shared/sheets/sheet';

const FILES: Readonly<Record<FontName, string>> = { plain: 'DejaVuSansCondensed.ttf', bold: 'DejaVuSansCondensed-Bold.ttf' };

/**
 * Where the fonts that the program ships lie, whether it runs from its sources or built.
 * @throws {Error} when the program's own files are incomplete
 */
export function fontFiles(): Readonly<Record<FontName, string>> {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; folder = dirname(folder)) {
    const fonts = join(folder, 'resources', 'fonts');
    if (existsSync(join(fonts, FILES.plain))) return { plain: join(fonts, FILES.plain), bold: join(fonts, FILES.bold) };
    if (folder === dirname(folder)) throw new Error('The fonts of the program are missing (resources/fonts). Install the program again.');
  }
}
