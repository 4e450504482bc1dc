import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { releaseMatrix } from '#shared/sheets/release-matrix';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { evaluate } from '#shared/evaluate';
import { planPoint } from '#shared/geometry/point';
import { builtRoom } from '../../support/served-room.ts';

const built = () => {
  const made = builtRoom().opening(1, 2, 0.5, { name: 'D1', kind: 'damper', swing: 'none' });
  const damper = made.lastOpening.id;
  return made
    .shutdown('power', null, { name: 'Server racks', on: 'release' })
    .shutdown('damper', damper, { name: '', on: 'first-detector' })
    .shutdown('fan', 'gone', { name: 'AHU-1', on: 'first-detector' })
    .room(3, 4, 2.7, planPoint(8, 0));
};
const X = { kind: 'bold', words: 'X' };

describe('the release matrix', () => {
  test('has a row for each that is shut, in the order of the signals, and says where nothing is', () => {
    expect(releaseMatrix(derivePlan(built().plan)).rows).toEqual([
      ['Room 1', 'Damper', 'Damper', 'Damper D1', X, '', '', ''],
      ['', 'AHU-1', 'Fan', 'NO LONGER DRAWN', X, '', '', ''],
      ['', 'Server racks', 'Power', 'not drawn', '', '', '', X],
      ['Room 2', 'no row entered', '', '', '', '', '', ''],
    ]);
  });
  test('is left out while no room has any row', () => expect(releaseMatrix(derivePlan(builtRoom().plan)).rows).toEqual([]));
  test.each(['submittal', 'field'] as const)('stands in the %s set', (set) => {
    const sheets = composeSheets(evaluate(built().plan), new Map(), { paper: 'auto', scale: 'auto', set, printedAt: '2026-01-01 00:00' });
    const words = JSON.stringify(sheets.map(({ marks }) => marks));
    expect(words).toContain('Release matrix');
    expect(words).toContain('Server racks');
  });
});
