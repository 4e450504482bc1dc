import DxfParser from 'dxf-parser';
import { bench, describe } from 'vitest';
import { readUnderlay } from '../../src-main/services/underlay/read-underlay.ts';

const LINES = 60_000;

/** A drawing of many lines on a few layers, as plain ASCII tags. */
function manyLines(): string {
  const parts = ['0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n'];
  for (let i = 0; i < LINES; i += 1) {
    const x = (i % 300) * 100;
    const y = Math.floor(i / 300) * 100;
    parts.push(`0\nLINE\n8\nWALL${i % 7}\n10\n${x}.25\n20\n${y}.5\n30\n0.0\n11\n${x + 90}.75\n21\n${y + (i % 90)}.125\n31\n0.0\n`);
  }
  parts.push('0\nENDSEC\n0\nEOF\n');
  return parts.join('');
}

const text = manyLines();
const bytes = new TextEncoder().encode(text);

describe(`reading a DXF of ${LINES} lines`, () => {
  bench('ours, to a drawing', async () => {
    await readUnderlay(bytes, { name: 'many-lines.dxf', page: 1 }, () => undefined);
  });
  bench('dxf-parser, to entities', () => {
    new DxfParser().parseSync(text);
  });
});
