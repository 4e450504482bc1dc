import { describe, expect, test } from 'vitest';
import { datumsOf } from '#shared/derived/datum';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import type { Plan } from '#shared/model/plan';
import { asBuiltTable, deviationVerdict } from '#shared/sheets/as-built-table';
import { builtPlaces, placeOffFaces } from '#shared/sheets/built-places';
import type { Sheet } from '#shared/sheets/sheet';
import { openingSchedule } from '#shared/sheets/opening-schedule';
import { formatLength } from '#shared/units/length-text';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { sheetsOf, textsOf, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const hut = (turn_rad = 0): Plan => {
  const turned = (x: number, y: number) => ({ x: x * Math.cos(turn_rad) - y * Math.sin(turn_rad), y: x * Math.sin(turn_rad) + y * Math.cos(turn_rad) });
  const at = (x: number, y: number, z: number) => {
    const place = turned(x, y);
    return place3(place.x, place.y, z);
  };
  const nozzle = turned(3, 2);
  return planBuilder('metric')
    .outline([turned(0, 0), turned(5, 0), turned(5, 4), turned(0, 4)], 2.6)
    .network()
    .run([at(0.2, 2, 2), at(0.2, 2, 2.5), at(3, 2, 2.5), at(3, 2, 2.3)])
    .nozzle(nozzle.x, nozzle.y, 2.3).plan;
};

/** A plan whose dimensions came out other than drawn by what is given for each kind of part [m]. */
function measured(plan: Plan, off: Readonly<Record<string, number>>): Plan {
  const copy = structuredClone(plan);
  for (const { id, part, planned_m } of fieldDimensionsOf(derivePlan(copy))) {
    const deviation_m = off[part];
    if (deviation_m !== undefined) copy.siteRecord.measurements[id] = { value_m: planned_m + deviation_m, by: 'R. F.', at: '2026-03-04 10:20', instrument: 'laser 2', reason: 'Duct in the way', approvedBy: '', photos: [] };
  }
  return copy;
}

const inSeries = (sheets: readonly Sheet[], series: string): Sheet[] => sheets.filter(({ number }) => number.includes(`${series}.`));

describe('the field sheet of a room', () => {
  test('names corners, walls, diagonals, ceiling places, nozzles and pipe marks as the table does', () => {
    const sheets = inSeries(sheetsOf(hut(), { set: 'field' }), 'F12');
    const [drawing] = sheets;
    expect(drawing?.title).toBe('Field sheet: Room 1');
    const words = wordsOf(drawing ?? { marks: [] });
    expect(words).toEqual(expect.arrayContaining(['A', 'B', 'C', 'D', 'a 5.000 m', 'b 4.000 m', 'e 6.403 m', 'f 6.403 m', 'g 2.600 m', 'h 2.600 m', 'i 2.600 m', 'N1', 'P1', 'ask before any change']));
    const table = sheets.slice(1).flatMap(wordsOf);
    for (const letter of ['a', 'e', 'i']) expect(table).toContain(`Room 1 ${letter}`);
  });

  test.each(['F1', 'F2'] as const)('of %s: texts keep clear of each other, and every label has room', async (name) => {
    const { plan } = await buildDemo(name);
    for (const sheet of inSeries(sheetsOf(plan, { set: 'field' }), 'F12').filter(({ title }) => title.startsWith('Field sheet'))) {
      expect(textOverlaps(textsOf(sheet))).toEqual([]);
      expect(wordsOf(sheet).join(' ')).not.toContain('had no room');
    }
  });
});

describe('as built', () => {
  test('a place off other distances of its faces is where they meet, however the room is turned', () => {
    for (const turn of [0, 0.4, 2]) {
      const derived = derivePlan(hut(turn));
      const datum = [...datumsOf(derived).values()][0];
      const at = derived.nozzles[0]?.at;
      if (!datum || !at) throw new Error('The hut has a nozzle off a datum.');
      const built = placeOffFaces(datum, at, undefined, undefined);
      expect(Math.hypot(built.x - at.x, built.y - at.y)).toBeLessThan(1e-12);
      const away = (face: 0 | 1, { x, y }: { x: number; y: number }): number => {
        const { segment, inward_rad } = datum.faces[face];
        return (x - segment.a.x) * Math.cos(inward_rad) + (y - segment.a.y) * Math.sin(inward_rad);
      };
      const moved = placeOffFaces(datum, at, 1.25, 1.75);
      expect(away(0, moved)).toBeCloseTo(1.25, 9);
      expect(away(1, moved)).toBeCloseTo(1.75, 9);
    }
  });

  test('only what was measured is a built place', () => {
    const plan = measured(hut(), { first: 0.1 });
    const derived = derivePlan(plan);
    const all = fieldDimensionsOf(derived);
    const datum = [...datumsOf(derived).values()][0];
    const nozzle = derived.nozzles[0];
    const places = builtPlaces(all, plan.siteRecord.measurements, (about) => (about.kind === 'nozzle' && nozzle?.at ? { at: nozzle.at, datum } : undefined));
    expect(places).toHaveLength(1);
    expect(Math.hypot((places[0]?.built.x ?? 0) - (places[0]?.drawn.x ?? 0), (places[0]?.built.y ?? 0) - (places[0]?.drawn.y ?? 0))).toBeCloseTo(0.1, 9);
  });

  test('a deviation fits at the site tolerance, is recorded up to the room to move, and is asked beyond or where nothing is known', () => {
    expect(deviationVerdict(0.01, 0.01, undefined)).toBe('fits');
    expect(deviationVerdict(-0.01, 0.01, undefined)).toBe('fits');
    expect(deviationVerdict(0.0101, 0.01, undefined)).toBe('ask');
    expect(deviationVerdict(0.01, 0.01, [0, 0.005])).toBe('ask');
    expect(deviationVerdict(0.05, 0.01, [0.02, 0.05])).toBe('record');
    expect(deviationVerdict(0.0501, 0.01, [0.02, 0.05])).toBe('ask');
    expect(deviationVerdict(-0.0201, 0.01, [0.02, 0.05])).toBe('ask');
  });

  test('nothing measured, no sheet; what was measured stands beside what was approved, struck through on the plan', () => {
    expect(inSeries(sheetsOf(hut()), '13')).toEqual([]);
    expect(asBuiltTable(derivePlan(hut())).rows).toEqual([]);
    const sheets = inSeries(sheetsOf(measured(hut(), { first: 0.12, height: 0 })), '13');
    expect(sheets[0]?.title).toBe('As built: Room 1');
    const words = sheets.map(wordsOf);
    expect(words[0]).toEqual(expect.arrayContaining(['was 3.000 m', 'a 3.120 m']));
    const strikes = sheets[0]?.marks.filter((mark) => mark.kind === 'line' && mark.places.length === 4 && Math.abs((mark.places[1] ?? 0) - (mark.places[3] ?? 0)) < 1e-9) ?? [];
    expect(strikes.length).toBeGreaterThan(0);
    const table = words.slice(1).flat();
    expect(table).toEqual(expect.arrayContaining(['3.000 m', '3.120 m', '+120 mm']));
    expect(table.join(' ')).toContain('nobody yet');
    for (const sheet of sheets) expect(textOverlaps(textsOf(sheet))).toEqual([]);
  });

  test('an answer that was worked out stands in place of the bare deviation', () => {
    const plan = measured(hut(), { first: 0.12 });
    const ids = Object.keys(plan.siteRecord.measurements);
    const answers = new Map(ids.map((id) => [id, 'Breaks N2: ask the designer']));
    const words = inSeries(sheetsOf(plan, { answers }), '13').flatMap(wordsOf).join(' ');
    expect(words).toContain('Breaks N2');
  });
});

describe('openings', () => {
  test('every opening with its wall, size and where it leads; what nobody has looked at says so', () => {
    const built = planBuilder('metric').room(5, 4, 2.6, { x: 0, y: 0 }).opening(0, 2, 0.9, { name: 'Door 1' });
    const [row] = openingSchedule(derivePlan(built.plan)).rows;
    expect(row?.slice(1, 5)).toEqual(['Door 1', expect.stringMatching(/door/i), 'south', formatLength(0.9, 'metric')]);
    expect(row?.at(-1)).toContain('not known');
  });
});
