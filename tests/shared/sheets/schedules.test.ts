import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { assumptionsOf } from '#shared/assumptions/assumptions-of';
import { acceptFinding } from '#shared/commands/accept-finding';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { LIMIT_KEYS } from '#shared/profile/limit-catalogue';
import { blankProfile } from '#shared/profile/unit-profile';
import { cautionsTable, holdPointsTable } from '#shared/sheets/cautions';
import { fieldRooms } from '#shared/margins/field-room';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { fieldTable } from '#shared/sheets/field-tables';
import { acceptedTable, assumptionsTable, findingCounts, findingsTable, lapsedTable, notCheckedTable, numberFindings } from '#shared/sheets/findings-table';
import { jobTable, notesTable } from '#shared/sheets/job-tables';
import { legendTable } from '#shared/sheets/legend';
import { limitsTable, profilesInUse } from '#shared/sheets/limits-table';
import { PAPERS } from '#shared/paper/papers';
import { pathSchedule } from '#shared/sheets/pipe-schedules';
import { cylinderSchedule, nozzleSchedule, spaceSchedule } from '#shared/sheets/schedules';
import { SYMBOL_NAMES } from '#shared/sheets/symbol-names';
import type { Cell } from '#shared/sheets/tables';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { at3, layout } from '../../support/layout.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll } from '../../support/try-command.ts';

const demo = async (name: 'F1' | 'F2' | 'F2-faults'): Promise<Plan> => (await buildDemo(name)).plan;

/** What a cell says, whether it is printed or filled into a field. */
const filledIn = (cell: Cell): unknown => (typeof cell !== 'string' && cell.kind === 'field' ? cell.form?.value : cell);

describe('schedules', () => {
  // Figures of the demo plans as they are set out in whole-job.md, part F.
  test('the hut’s nozzle is where its brief says', async () => {
    const [row] = nozzleSchedule(derivePlan(await demo('F1'))).rows;
    expect(row).toEqual(['N1', 'Signal hut', `west face 8'-0"`, `south face 5'-6"`, `+7'-4"`, '8"', '0°, 180°', '0.0342 in²', '3/4", 4"']);
  });

  test('the hut’s path is 12-9 with three elbows', async () => {
    const derived = derivePlan(await demo('F1'));
    expect(pathSchedule(derived).rows).toEqual([['N1', `12'-9"`, '3', '0']]);
  });

  test('the annex’s paths are 31.83 37.33 21.33 26.83 9.33 ft', async () => {
    const paths = pathSchedule(derivePlan(await demo('F2'))).rows.slice(0, 5).map(([, length]) => length);
    expect(paths).toEqual([`31'-10"`, `37'-4"`, `21'-4"`, `26'-10"`, `9'-4"`]);
  });

  test('spaces say what is known and what is not, cylinders their assembly', async () => {
    const annex = derivePlan(await demo('F2'));
    expect(spaceSchedule(annex).rows.map(([name, floor, height]) => [name, floor, height])).toEqual([
      ['Archive annex', '677.25 ft²', `9'-6"`],
      ['Archive annex, under floor', '677.25 ft²', `1'-0"`],
    ]);
    expect(cylinderSchedule(annex).rows[0]?.[1]).toBe('5: C1, C2, C3, C4, C5');
    const bare = derivePlan(planBuilder().room(4, 3, null).network().plan);
    expect(spaceSchedule(bare).rows[0]).toEqual(expect.arrayContaining(['not known']));
    expect(cylinderSchedule(bare).rows[0]).toEqual(expect.arrayContaining(['none drawn', 'none entered']));
  });

  test('a check valve against the flow is said in capitals', () => {
    const part = { id: 'p', kind: 'check-valve', name: 'Check valve', length_m: 0.1, setPressure_Pa: null, arrowDownstream: false } as const;
    expect(JSON.stringify(cylinderSchedule(derivePlan(planBuilder().room(4, 3, 2).network({ assembly: [part] }).plan)).rows)).toContain('ARROW AGAINST THE FLOW');
  });

  test('a nozzle that hangs nowhere is listed all the same', () => {
    const [row] = nozzleSchedule(derivePlan(planBuilder().run([place3(1, 1, 2), place3(2, 1, 2)]).nozzle(2, 1, 2, []).plan)).rows;
    expect(row).toEqual(expect.arrayContaining(['in no space', 'not known', 'none drawn']));
  });

  test('two nozzles of one name are told apart by their networks', () => {
    const built = planBuilder().room(6, 4, 2.5).network().nozzle(1, 1, 2, [0], { name: 'N1' }).network().nozzle(3, 1, 2, [0], { name: 'N1' });
    expect(nozzleSchedule(derivePlan(built.plan)).rows.map(([name]) => name)).toEqual(['N1 (Network 1)', 'N1 (Network 2)']);
  });
});

describe('findings', () => {
  test('all but kept ones are numbered, gravest first, with sentence, cure and source', async () => {
    const { findings } = evaluate(await demo('F2-faults'));
    const numbered = numberFindings(findings);
    expect(numbered.map(({ number }) => number)).toEqual(numbered.map((_, i) => i + 1));
    const { rows, note } = findingsTable(numbered, findings);
    const unchecked = notCheckedTable(numbered).rows;
    expect(rows.length + unchecked.length).toBe(findings.filter(({ verdict }) => verdict !== 'ok').length);
    for (const row of unchecked) expect(row[0]).toEqual({ kind: 'verdict', verdict: 'not-checked' });
    expect(rows[0]?.[0]).toEqual({ kind: 'verdict', verdict: 'stop' });
    for (const row of rows) expect(String(row[3])).toMatch(/[.!?]$/);
    expect(note).toContain(findingCounts(findings));
    expect(findingCounts(findings)).toMatch(/^\d+ stops, \d+ warnings?, .* kept$/);
  });
});

describe('accepted findings', () => {
  const plan = layout({ nozzles: [{ at: at3(0.2, 2, 2.4) }] });
  const stop = evaluate(plan).findings.find(({ rule }) => rule === 'N1');
  if (!stop) throw new Error('N1 was not asked.');
  const accepted = done(plan, acceptFinding(stop, { reason: 'Agreed on site', by: 'M. Orrin', date: '2026-11-30' })).next;

  test('stand apart, with reason, name and date, after the open ones', () => {
    const { findings } = evaluate(accepted);
    const numbered = numberFindings(findings);
    expect(numbered.at(-1)?.finding.waiver).toBeDefined();
    expect(acceptedTable(numbered).rows).toMatchObject([[{ verdict: 'stop' }, String(numbered.length), 'Wall clearance: N1', expect.any(String), 'Agreed on site.', 'M. Orrin', '2026-11-30']]);
    expect(findingsTable(numbered, findings).rows.map((row) => row[1])).not.toContain(String(numbered.length));
    expect(findingCounts(findings)).toContain('1 accepted');
  });
  test('that have lapsed say why', () => {
    const moved = doneAll(accepted, moveNozzle({ kind: 'nozzle', network: 'net', id: 'n1' }, at3(3, 2, 2.4)));
    expect(lapsedTable(evaluate(moved).lapsed).rows).toEqual([['Wall clearance: N1', 'Agreed on site.', 'M. Orrin', '2026-11-30', 'The limit is kept by now.']]);
  });
});

test('what was taken for granted is listed with what it affects and where it is changed', () => {
  const assumptions = assumptionsOf(evaluate(layout({})));
  const { rows } = assumptionsTable(assumptions);
  expect(rows).toHaveLength(assumptions.length);
  for (const row of rows) expect(row.every((cell) => typeof cell === 'string' && cell !== '')).toBe(true);
});

describe('limits', () => {
  test('every limit is listed with its source, a blank one as blank', () => {
    const { rows, note } = limitsTable(blankProfile('x', 'Own'), 'metric');
    expect(rows).toHaveLength(LIMIT_KEYS.length + 2);
    expect(rows.filter((row) => row[1] === 'BLANK')).toHaveLength(LIMIT_KEYS.length + 1);
    expect(note).toContain(`${LIMIT_KEYS.length + 1} blank`);
  });

  test('a sample says so, and each profile in use is listed once', async () => {
    const derived = derivePlan(await demo('F2'));
    const [profile] = profilesInUse(derived);
    expect(profilesInUse(derived)).toHaveLength(1);
    expect(profile && limitsTable(profile, 'feet').note).toContain('SAMPLE PROFILE');
  });
});

describe('other tables', () => {
  test('the legend holds the symbols in use and no others', () => {
    const sizes = typeSizesOf(PAPERS.A3);
    expect(legendTable(new Set(['nozzle', 'datum']), sizes).rows.map((row) => row[1])).toEqual(['nozzle, one stroke per hole', 'datum: corner of finished faces']);
    expect(legendTable(new Set(SYMBOL_NAMES), sizes).rows).toHaveLength(SYMBOL_NAMES.length);
    for (const row of legendTable(new Set(SYMBOL_NAMES), sizes).rows) {
      const [drawing] = row;
      if (typeof drawing === 'string' || drawing?.kind !== 'drawing') throw new Error('A legend begins with a drawing.');
      expect(drawing.draw(0, 0).length).toBeGreaterThan(0);
    }
  });

  test('each nozzle has four dimensions to measure, and what was measured is printed', async () => {
    const plan = await demo('F1');
    const dimensions = fieldDimensionsOf(derivePlan(plan)).filter(({ kind }) => kind === 'nozzle');
    expect(dimensions.map(({ name, from, planned_m }) => [name, from, Math.round(planned_m * 1000)])).toEqual([
      ['N1 a', 'west face', 2438],
      ['N1 b', 'south face', 1676],
      ['N1 c', 'finished floor', 2235],
      ['N1 d', 'ceiling', 203],
    ]);
    plan.siteRecord.measurements[dimensions[0]?.id ?? ''] = { value_m: 2.4384 + 0.0127, by: 'A fitter', at: '2026-03-05', instrument: 'laser', reason: '', approvedBy: '', photos: [] };
    const derived = derivePlan(plan);
    const rowOf = (table: ReturnType<typeof fieldTable>) => table.rows.find(([name]) => name === 'N1 a');
    expect(rowOf(fieldTable(derived))?.[5]).toBe('ask');
    const table = fieldTable(derived, fieldRooms(derived));
    const { rows } = table;
    expect(rowOf(table)?.map(filledIn)).toEqual(['N1 a', 'West face', 'orifice axis', `8'-0"`, '2438', `−2'-10 3/4" +2'-0 3/16"`, `8'-0 1/2"`, '1/2"', '', 'A fitter', '2026-03-05', 'laser', '']);
    expect(rows.slice(-2)).toEqual([Array(13).fill(''), Array(13).fill('')]);
  });

  test('hold points keep their ticks, cautions defer to the manual', () => {
    const { rows } = holdPointsTable({ H5: { done: true, by: 'A', witness: 'B', at: 'today' } });
    expect(rows).toHaveLength(12);
    expect(rows[4]?.map(filledIn)).toEqual(['H5', expect.any(String), 'W', 'yes', 'A', 'B', 'today']);
    expect(JSON.stringify(cautionsTable().rows)).toMatch(/manual of the unit.*listing.*adopted code.*licensed practice/);
  });

  test('the job table never prints an empty value', () => {
    const { plan } = planBuilder();
    expect(jobTable(plan).rows.every((row) => row[1] === 'not entered')).toBe(true);
    expect(notesTable(plan).rows).toEqual([]);
  });
});
