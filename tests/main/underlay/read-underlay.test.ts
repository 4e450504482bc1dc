import { expect, test } from 'vitest';
import { LARGEST_UNDERLAY_bytes } from '#shared/underlay/drawing';
import { readUnderlay } from '../../../src-main/services/underlay/read-underlay.ts';
import { dxfBytes, line } from '../../support/dxf-file.ts';
import { pdfPage } from '../../support/pdf-file.ts';
import { jpegFile, pngFile } from '../../support/picture-file.ts';
import { problemIn, quiet } from '../../support/underlay.ts';

const options = { name: 'anything.bin', page: 1 };

test.each([
  ['dxf', dxfBytes({ entities: [line(0, 0, 1, 1)] })],
  ['pdf', pdfPage({ content: '0 0 m 9 0 l S' })],
  ['svg', new TextEncoder().encode('<svg viewBox="0 0 9 9"><path d="M0 0h5" stroke="black"/></svg>')],
  ['png', pngFile(3, 2)],
  ['jpeg', jpegFile(3, 2, { orientation: 6 })],
])('a %s is known by its content, and its bytes are left alone', async (kind, bytes) => {
  const given = Buffer.from(bytes);
  expect((await readUnderlay(given, options, quiet)).kind).toBe(kind);
  expect(given.equals(bytes)).toBe(true);
});

test('a file that is too large is refused before it is looked at', async () => {
  const problem = await problemIn(readUnderlay(new Uint8Array(LARGEST_UNDERLAY_bytes + 1), options, quiet));
  expect(problem.what).toMatch(/larger than 200 MB/);
  expect(problem.where).toBe('anything.bin');
});
