import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Release } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { releasingTable } from '#shared/sheets/releasing-table';
import { layout } from '../../support/layout.ts';
import { withRelease } from '../../support/releasing-circuit.ts';

const table = (given: Partial<Release> | null) => releasingTable(evaluate(withRelease(given)).design, 'metric');
const horn = { id: 'd2', name: 'Horn', kind: 'other' as const, distance_m: 12, current_A: 0.2, leastVoltage_V: 16, wiring: 'tapped' as const };

describe('the table of releasing circuits', () => {
  test('lists every device along its wire', () => {
    const solenoid = { id: 'd1', name: 'Solenoid', kind: 'solenoid' as const, distance_m: 30, current_A: null, leastVoltage_V: null, wiring: 'in-line' as const };
    const { rows } = table({ devices: [solenoid, horn] });
    expect(rows.map((row) => row.slice(0, 6))).toEqual([
      ['Network', '1', 'Horn', 'ON A BRANCH', '12.000 m', '0.200 A'],
      ['', '2', 'Solenoid', 'both wires go through it', '30.000 m', '1.50 A'],
    ]);
    // By hand: 20.4 V − 2·12 m·R·1.7 A − 2·18 m·R·1.5 A; 14 AWG solid, 75 °C: 10.07 Ω/km (NEC Chapter 9 Table 8).
    expect(rows[1]?.[6]).toBe(`${(20.4 - 2 * 12 * 0.01007 * 1.7 - 2 * 18 * 0.01007 * 1.5).toFixed(1)} V`);
    expect(rows[1]?.[7]).toBe('18.0 V');
  });

  test('says of each circuit what else is known, and what is not', () => {
    expect(table({}).foot).toEqual([
      {
        kind: 'words',
        words:
          'Network: 14 AWG copper, solid, in EMT trade size 1/2; panel at the end of its battery 20.4 V, releasing output 2.00 A for 1.0 s; end-of-line part: behind the last device; taking the actuator off shows at the panel: yes; panel listed for releasing: yes, with this solenoid: yes, by: Listing of the test; battery 18.0 Ah, 0.300 A standing by, 2.00 A in alarm.',
      },
    ]);
    expect(table({ battery: null, conduit: null, isActuatorWatched: false, panel: { isListed: null, isCompatible: false, listing: '' }, panelCurrent_A: null, endOfLine: 'unknown' }).foot?.[0]).toMatchObject({
      words: expect.stringMatching(/conduit not chosen; .* releasing output not known for .*; end-of-line part: not yet known; taking the actuator off shows at the panel: NO; panel listed for releasing: not known, with this solenoid: NO, by: not known; battery not known\.$/),
    });
  });

  test('what is not known says so', () => {
    expect(table({ devices: [{ ...horn, distance_m: null, current_A: null, leastVoltage_V: null, wiring: 'unknown' }] }).rows).toEqual([['Network', '1', 'Horn', 'not yet known', 'not known', 'not known', 'not known', 'not known']]);
    expect(table({ devices: [] }).rows).toEqual([['Network', '', 'no device on the circuit', '', '', '', '', '']]);
  });

  test('is left out while no circuit is drawn up', () => {
    expect(table(null)).toMatchObject({ rows: [], foot: [] });
  });

  test.each(['submittal', 'field'] as const)('stands in the %s set where there is a circuit', (set) => {
    const words = (given: Partial<Release> | null) => JSON.stringify(composeSheets(evaluate(withRelease(given)), new Map(), { paper: 'auto', scale: 'auto', set, printedAt: '2026-01-01 00:00' }).map(({ marks }) => marks));
    expect(words({ devices: [horn] })).toContain('terminals in the order of the wire');
    expect(words(null)).not.toContain('terminals in the order of the wire');
  });

  test('a plan without networks has none', () => {
    expect(releasingTable(evaluate({ ...layout({}), networks: {} }).design, 'feet').rows).toEqual([]);
  });
});
