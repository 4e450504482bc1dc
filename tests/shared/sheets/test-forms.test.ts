import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { testForms } from '#shared/sheets/test-forms';
import type { Cell } from '#shared/sheets/tables';
import { armedPlan, armedWith, entry, goodLog } from '../../support/armed-plan.ts';

const { keys } = armedPlan();
const tablesOf = (plan: Plan, printedAt = '2026-12-01 10:00') => testForms(evaluate(plan), printedAt).map(({ table }) => table);
const tableOf = (plan: Plan, title: string, printedAt?: string) => {
  const found = tablesOf(plan, printedAt).find((table) => table.title.startsWith(title));
  if (!found) throw new Error(`No table ${title}.`);
  return found;
};
const words = (cell: Cell | undefined): string => (cell === undefined ? '' : typeof cell === 'string' ? cell : 'words' in cell ? cell.words : '');
const rowsOf = (plan: Plan, title: string, printedAt?: string) => tableOf(plan, title, printedAt).rows.map((row) => row.map(words));

describe('forms of the tests', () => {
  test('of a plan from which nothing has come back are blank, with what each reading must be', () => {
    const { plan } = armedPlan();
    expect(tablesOf(plan).map(({ title }) => title)).toEqual([
      'Hold points',
      'What each hold point asks',
      'Pneumatic test of the pipe (H5)',
      'Puff test (H5)',
      'Releasing circuits on a dummy load (H9)',
      'Before the last connection (H12)',
      'Functional test: every input against the release matrix (H11)',
      'Service: what is due',
      'Pressure of the cylinders',
    ]);
    const circuit = rowsOf(plan, 'Releasing circuits');
    expect(circuit.map((row) => row[1])).toEqual(['Insulation', 'Continuity, far end joined', 'Supervision current', 'Current on the dummy load', 'Voltage on the dummy load']);
    expect(circuit.map((row) => row[2])).toEqual([
      'at least 1.00 MΩ, panel and devices taken off',
      'at most 1.60 Ω: both wires, far end joined',
      'more than nothing, at most 0.150 A',
      'at least 1.50 A',
      'at least 18.0 V at the end of the wire',
    ]);
    expect(circuit.every((row) => row[3] === '')).toBe(true);
  });

  test('every hold point says what must be seen and why, and a tick that no longer holds is called so', () => {
    const { plan } = armedPlan();
    expect(rowsOf(plan, 'What each hold point asks').every((row) => row[1] !== '' && row[2] !== '')).toBe(true);
    expect(tableOf(plan, 'Hold points').foot).toEqual([]);
    const lost = armedWith([...goodLog(keys), entry('insulation', keys.network, { value: 5e5 })], 'H10');
    expect(tableOf(lost, 'Hold points').foot).toMatchObject([{ words: expect.stringMatching(/^NO LONGER HOLDS: H9, H10\./), isStrong: true }]);
  });

  // 40 psi are 2.758 bar, 8 psi 0.552 bar (1 psi = 6894.76 Pa).
  test('the pipe test says pressure, time and loss', () => expect(tableOf(armedPlan().plan, 'Pneumatic').note).toMatch(/2\.758 bar .*10 min.* 0\.552 bar lost/));

  test('what was read is filled in, what is not as asked stands out, what cannot be judged says so', () => {
    const plan = armedWith([...goodLog(keys), entry('alarm', keys.network, { value: 1.2 })]);
    const circuit = rowsOf(plan, 'Releasing circuits');
    expect(circuit[0]).toEqual(['Network 1', 'Insulation', 'at least 1.00 MΩ, panel and devices taken off', '20.00 MΩ', 'Meter 7', 'Fitter', '2026-03-04 10:00']);
    expect(circuit[3]?.[3]).toBe('1.20 A: NOT AS ASKED');
    expect(rowsOf(plan, 'Before the last').find((row) => row[1]?.startsWith('Voltage'))?.[3]).toBe('0.0 V: not checked');
    expect(rowsOf(plan, 'Wiring and arming log')).toHaveLength(11);
  });

  test('the functional test has every input and every row of the release matrix', () => {
    const { plan } = armedPlan();
    const room = Object.values(plan.levels).flatMap(({ enclosures }) => Object.values(enclosures))[0];
    if (!room) throw new Error('The plan has no room.');
    room.shutdowns.s1 = { id: 's1', name: 'AHU-1', kind: 'fan', target: null, on: 'second-detector' };
    room.people.delay_s = 30;
    const rows = rowsOf(plan, 'Functional test');
    expect(rows.some((row) => row[1] === 'Second detector' && row[2] === 'AHU-1: goes off (not drawn)')).toBe(true);
    expect(rows.some((row) => row[2]?.includes('the delay of 30 s runs'))).toBe(true);
    expect(rows.some((row) => row[1] === 'Abort switch')).toBe(false);
  });

  test('the service sheet says what is overdue on the day of print, and of a preview only when it is due', () => {
    const plan = armedWith(goodLog(keys));
    expect(rowsOf(plan, 'Service', '2026-09-05 10:00')[0]).toMatchObject(['Pressure of the cylinder', 'Cylinder C1', '2026-03-04', '2026-09-04', 'OVERDUE', '', '']);
    expect(rowsOf(plan, 'Service', 'preview').find((row) => row[0] === 'Pressure of the cylinder')?.[4]).toBe('');
  });

  test('pressures stand corrected, a lost 5 % stands out, and rows for the next are left', () => {
    const plan = armedWith([...goodLog(keys), entry('pressure', keys.cylinder, { value: 282e5, temperature_K: 288.15, at: '2026-09-01 08:00' }), entry('pressure', keys.cylinder, { value: 282e5, at: '2026-09-02 08:00' })]);
    const rows = rowsOf(plan, 'Pressure of the cylinders');
    expect(rows).toHaveLength(6);
    expect(rows[0]?.slice(0, 6)).toEqual(['Cylinder C1', '2026-03-04 10:00', '300.0 bar gauge', '15.0 °C', '300.0 bar gauge', '0.0 % lost']);
    expect(rows[1]?.[5]).toBe('6.3 % lost: REFILL OR REPLACE');
    expect(rows[2]?.slice(3, 6)).toEqual(['not entered', 'not known', 'not checked']);
  });

  test.each(['submittal', 'field'] as const)('stand in the %s set', (set) => {
    const sheets = composeSheets(evaluate(armedWith(goodLog(keys))), new Map(), { paper: 'auto', scale: 'auto', set, printedAt: '2026-12-01 10:00' });
    const printed = JSON.stringify(sheets.map(({ marks }) => marks));
    for (const title of ['Pneumatic test of the pipe', 'Puff test', 'Functional test', 'Wiring and arming log as recorded', 'Service: what is due']) expect(printed).toContain(title);
  });
});
