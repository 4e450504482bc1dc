import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Plan } from '#shared/model/plan';
import { logoOf } from '#shared/sheets/logo-of';
import { readLogo } from '../../../src-main/services/read-logo.ts';
import { jpegFile, pngChunk, pngFile } from '../../support/picture-file.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { sheetsOf, wordsOf } from '../../support/sheet-set.ts';

const { signal } = new AbortController();

const SIGNATURE_AND_HEAD_bytes = 33;

/** A grey PNG with other bytes in place of its pixels. */
function pngOf(width: number, height: number, packed: Uint8Array): Uint8Array {
  const head = pngFile(width, height, [], new Uint8Array(1)).subarray(0, SIGNATURE_AND_HEAD_bytes);
  return Uint8Array.from([...head, ...pngChunk('IDAT', packed), ...pngChunk('IEND', [])]);
}

/** A plan with a logo, and how its file is found. */
function withLogo(bytes: Uint8Array | undefined, name = 'mark.png') {
  const plan: Plan = structuredClone(planBuilder('metric').room(5, 4, 2.6).plan);
  plan.assets.mark = { id: 'mark', name, file: name, sha256: createHash('sha256').update(bytes ?? '').digest('hex') };
  plan.settings.sheets.titleBlock.logo = 'mark';
  return { plan, find: async () => bytes && { name, bytes } };
}
const printed = (plan: Plan, logo: Awaited<ReturnType<typeof readLogo>>) => sheetsOf(plan, { logo });
const LOST = 'LOGO NOT PRINTED';

describe('the logo of a plan', () => {
  test('a PNG stands on every sheet, in proportion and inside the title column', async () => {
    const { plan, find } = withLogo(pngFile(60, 20));
    const logo = await readLogo(plan, find, signal);
    expect(logo).toMatchObject({ mime: 'image/png', width_px: 60, height_px: 20 });
    for (const sheet of printed(plan, logo)) {
      const pictures = sheet.marks.flatMap((mark) => (mark.kind === 'image' ? [mark] : []));
      expect(pictures).toHaveLength(1);
      const [w = 0, , , d = 0, left = 0, bottom = 0] = pictures[0]?.matrix ?? [];
      expect(w / -d).toBeCloseTo(3, 9);
      expect(left > 0 && bottom > 0 && left + w < sheet.paper.width_mm).toBe(true);
      expect(wordsOf(sheet).join()).not.toContain(LOST);
    }
  });

  test('a JPEG as well', async () => {
    const { plan, find } = withLogo(jpegFile(80, 40), 'mark.jpg');
    expect(await readLogo(plan, find, signal)).toMatchObject({ mime: 'image/jpeg', width_px: 80, height_px: 40 });
  });

  test.each([
    ['whose file is missing', undefined],
    ['that is cut', pngFile(60, 20).subarray(0, 70)],
    ['whose pixels are no pixels', pngOf(60, 20, Buffer.from('not packed at all'))],
    ['that unpacks into far more than its head says', pngOf(10, 10, deflateSync(Buffer.alloc(40_000_000)))],
    ['that promises more pixels than a computer holds', pngOf(40_000, 40_000, deflateSync(Buffer.alloc(10)))],
    ['that is no picture', new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" width="4" height="4"><rect width="4" height="4"/></svg>')],
  ])('%s is left out, and every sheet says so', async (_, bytes) => {
    const { plan, find } = withLogo(bytes);
    const logo = await readLogo(plan, find, signal);
    expect(logo).toBeUndefined();
    for (const sheet of printed(plan, logo)) expect(wordsOf(sheet).join(' ')).toContain(LOST);
  });

  test('a file that cannot be read is left out; a cancelled print is not gone on with', async () => {
    const { plan } = withLogo(pngFile(4, 4));
    expect(await readLogo(plan, async () => Promise.reject(new Error('gone')), signal)).toBeUndefined();
    await expect(readLogo(plan, async () => Promise.reject(new Error('gone')), AbortSignal.abort())).rejects.toThrow();
    plan.settings.sheets.titleBlock.logo = null;
    expect(await readLogo(plan, async () => Promise.reject(new Error('gone')), signal)).toBeUndefined();
    expect(wordsOf(printed(plan, undefined)[0] ?? { marks: [] }).join(' ')).not.toContain(LOST);
  });

  test('only a picture is a logo', () => {
    const image = { mime: 'image/png' as const, bytes: pngFile(4, 4), width: 4, height: 4, matrix: [4, 0, 0, 4, 0, 0] as const };
    expect(logoOf({ kind: 'png', images: [image] })).toMatchObject({ width_px: 4, height_px: 4 });
    expect(logoOf({ kind: 'pdf', images: [image] })).toBeUndefined();
    expect(logoOf({ kind: 'jpeg', images: [] })).toBeUndefined();
  });
});
