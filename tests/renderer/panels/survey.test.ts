import { evaluate } from '#shared/evaluate';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { firstSteps } from '../../../src-renderer/panels/first-steps.ts';
import { unknownsOf } from '../../../src-renderer/panels/stages/unknowns.ts';

describe('what is not yet known', () => {
  test('an empty plan misses nothing yet; blanking a figure of a demo lists it', async () => {
    expect(unknownsOf(newPlan('metric'))).toEqual([]);
    const { plan } = await buildDemo('F1');
    const known = unknownsOf(plan).length;
    const blanked = structuredClone(plan);
    const [level] = Object.values(blanked.levels);
    const [enclosure] = Object.values(level?.enclosures ?? {});
    if (!enclosure) throw new Error('The demo has no room.');
    enclosure.height_m = null;
    enclosure.temperature = null;
    for (const corner of enclosure.outline) corner.wall.construction = 'unknown';
    const listed = unknownsOf(blanked);
    expect(listed).toHaveLength(known + 3);
    expect(listed.map(({ what }) => what)).toEqual(expect.arrayContaining(['floor to ceiling', 'temperatures', '4 of 4 walls']));
  });
});

describe('the five steps of a first drawing', () => {
  const ticks = (plan: Parameters<typeof evaluate>[0]): boolean[] => firstSteps(plan, evaluate(plan)).map(({ isDone }) => isDone);

  test('none is done on an empty plan, all of them in a finished demo', async () => {
    expect(ticks(newPlan('metric'))).toEqual([false, false, false, false, false]);
    expect(ticks((await buildDemo('F1')).plan)).toEqual([true, true, true, true, true]);
  });

  test('open stops keep the last one open', async () => {
    expect(ticks((await buildDemo('F2-faults')).plan)).toEqual([true, true, true, true, false]);
  });
});
