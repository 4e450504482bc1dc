import { evaluate } from '#shared/evaluate';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { thingName } from '#shared/model/thing-name';
import { planBuilder } from '../../support/plan-builder.ts';
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

describe('what nobody has looked at around the rooms', () => {
  test('each device, space and live part says it, and no longer once it is entered', () => {
    const built = planBuilder()
      .device('detector', 1, 1, { name: 'D1' })
      .device('abort', 2, 1, { name: 'A1' })
      .device('door-button', 3, 1, { name: 'B1', height_m: 1 })
      .adjoining('unknown', rectangle(2, 2), { name: 'Hall' })
      .obstruction('live-part', rectangle(1, 0.1), 0, 2, { name: 'Busbar' });
    expect(unknownsOf(built.plan).map(({ ref, what }) => `${thingName(built.plan, ref)}: ${what}`)).toEqual([
      'Live part Busbar: voltage',
      'Detector D1: height',
      'Detector D1: what it senses',
      'Detector D1: zone',
      'Abort switch A1: height',
      'Abort switch A1: whether it must be held',
      'Abort switch A1: whether manual release goes before it',
      'Hall: what it is',
      'Hall: gas that drifts in',
    ]);
    const known = planBuilder()
      .device('detector', 1, 1, { height_m: 2.4, senses: 'smoke', zone: 'A' })
      .device('sounder', 1, 2, { height_m: 2, isSeen: false, sound_dBA: 90 })
      .adjoining('corridor', rectangle(2, 2), { gas: 'does-not-reach' });
    expect(unknownsOf(known.plan)).toEqual([]);
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
