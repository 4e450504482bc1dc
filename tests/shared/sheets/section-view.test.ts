import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { PAPERS } from '#shared/paper/papers';
import { IN_CUT_m, alongCut_m, behindCut_m, letterOf, planCuts } from '#shared/sheets/section-cuts';
import { composeSection, sectionSize, sectionTitle } from '#shared/sheets/section-view';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { wordsOf } from '../../support/sheet-set.ts';

const SIZES = typeSizesOf(PAPERS.A3);

describe('section cuts', () => {
  test('a cut runs through the fullest row of nozzles', () => {
    const built = planBuilder().room(10, 8, 3).nozzle(2, 3, 2.8).nozzle(5, 3, 2.8).nozzle(8, 3, 2.8).nozzle(5, 6, 2.8);
    const [cut] = planCuts(derivePlan(built.plan));
    if (!cut) throw new Error('A room with nozzles has a section.');
    expect(cut.letter).toBe('A');
    expect(cut.nozzles.filter(({ at }) => at && Math.abs(behindCut_m(cut, at)) <= IN_CUT_m)).toHaveLength(3);
    expect(alongCut_m(cut, { x: 0, y: 0 })).toBeCloseTo(cut.from_m, 9);
    expect(cut.to_m - cut.from_m).toBeCloseTo(10, 9);
    expect(sectionTitle(cut)).toBe('Section A–A: Room 1, looking north');
  });

  test('a room without nozzles has none, letters go on past Z and leave out I and O', () => {
    expect(planCuts(derivePlan(planBuilder().room(5, 4, 3).plan))).toEqual([]);
    expect([0, 7, 8, 12, 13, 23, 24, 47, 48].map(letterOf)).toEqual(['A', 'H', 'J', 'N', 'P', 'Z', 'AA', 'AZ', 'BA']);
  });
});

describe('section view', () => {
  const section = (plan: Parameters<typeof derivePlan>[0], scale = 50) => {
    const derived = derivePlan(plan);
    const [cut] = planCuts(derived);
    if (!cut) throw new Error('The plan has a section.');
    const { width_mm, height_mm } = sectionSize(cut, scale, SIZES);
    return composeSection(derived, cut, scale, SIZES, plan.settings.lengths, { left: 0, top: 0, right: width_mm, bottom: height_mm });
  };

  test('heights are to scale: floor to ceiling 2.600 m at 1:50 is 52 mm', () => {
    const built = planBuilder().room(5, 4, 2.6).run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(3, 2, 2.5), place3(3, 2, 2.3)]).nozzle(3, 2, 2.3);
    const { marks } = section(built.plan);
    const walls = marks.flatMap((mark) => (mark.kind === 'line' && mark.stroke.width_mm === 0.7 && mark.places[0] === mark.places[2] ? [Math.abs((mark.places[3] ?? 0) - (mark.places[1] ?? 0))] : []));
    expect(walls.filter((height) => Math.abs(height - 52) < 1e-6)).toHaveLength(2);
    expect(wordsOf({ marks })).toEqual(expect.arrayContaining(['2.600 m', 'N1: 2.300 m', '300 mm below ceiling', 'ceiling +2.600 m', 'finished floor 0 mm']));
  });

  test('voids, beams and under-floor nozzles of the annex are shown', async () => {
    const words = wordsOf(section((await buildDemo('F2')).plan));
    expect(words).toEqual(expect.arrayContaining(['N1, N2', 'N3, N4', 'U1', 'Beam 1', `slab −1'-0"`, `ceiling +9'-6"`, 'C1 to C5']));
  });

  test('a ceiling of unknown height is said, not drawn', () => {
    const built = planBuilder().room(5, 4, null).nozzle(2, 2, 2.3);
    expect(wordsOf(section(built.plan))).toContain('ceiling height not known');
  });

  test('two ceiling heights are both labelled', () => {
    const built = planBuilder().room(6, 4, 3).ceilingZone([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 2, y: 4 }, { x: 0, y: 4 }], 2.5).nozzle(4, 2, 2.8);
    expect(wordsOf(section(built.plan))).toEqual(expect.arrayContaining(['ceiling +2.500 m', 'ceiling +3.000 m']));
  });
});
