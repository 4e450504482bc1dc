import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { LIGHT_INK } from '../../../src-renderer/ink.ts';
import { overlap_px2 } from '../../../src-renderer/canvas/label-placer.ts';
import { cutSection } from '../../../src-renderer/canvas/section-cut.ts';
import { findSectionPath } from '../../../src-renderer/canvas/section-path.ts';
import { dropText, groupName, isDropKept, sectionTexts } from '../../../src-renderer/canvas/section-texts.ts';
import { fittedSection } from '../../../src-renderer/canvas/section-view.ts';
import { smallPlan } from './support/small-plan.ts';

const sectionOf = (plan: Plan) => {
  const derived = derivePlan(plan);
  const path = findSectionPath(derived, { level: 'level-0', cut: null, selection: [] });
  if (!path) throw new Error('there is a way');
  return cutSection(derived, path, 'level-0');
};
const hangAt = (z: number): Plan =>
  produce(smallPlan(), (draft) => {
    const node = draft.networks.net?.nodes.n3;
    if (node) node.at = { ...node.at, z };
  });
const only = (plan: Plan) => {
  const [nozzle] = sectionOf(plan).nozzles;
  if (!nozzle) throw new Error('there is a nozzle');
  return nozzle;
};

describe('how a nozzle hangs', () => {
  test('kept: its height and its drop', () => {
    const nozzle = only(smallPlan());
    expect(isDropKept(nozzle)).toBe(true);
    expect(dropText(nozzle, 'metric')).toMatch(/^N1 at 2\.2.*, 0?\.?2.* below ceiling$|^N1 at .* below ceiling$/);
  });

  test('too low: the limit is named and told apart', () => {
    const nozzle = only(hangAt(2.0951));
    expect(isDropKept(nozzle)).toBe(false);
    expect(dropText(nozzle, 'metric')).toContain('limit');
  });

  test('through the ceiling', () => {
    const nozzle = only(hangAt(2.45));
    expect(isDropKept(nozzle)).toBe(false);
    expect(dropText(nozzle, 'metric')).toContain('above the ceiling');
  });

  test('a ceiling that is not known is never kept', () => {
    const unknown = produce(smallPlan(), (draft) => {
      const room = draft.levels['level-0']?.enclosures.room;
      if (room) room.height_m = null;
    });
    expect(isDropKept(only(unknown))).toBeUndefined();
    expect(dropText(only(unknown), 'metric')).toContain('not known');
  });
});

test('the texts of a section do not cover each other', () => {
  const cut = sectionOf(smallPlan());
  for (const [width, height] of [
    [1000, 300],
    [600, 170],
  ] as const) {
    const found = sectionTexts(cut, { view: fittedSection(cut, width, height), ink: LIGHT_INK, lengths: 'metric', selection: new Set(), measure: (text) => text.length * 7 });
    expect(found.map(({ text }) => text).join()).toContain('N1 at');
    for (const [i, a] of found.entries()) for (const b of found.slice(i + 1)) expect(overlap_px2(a.box, b.box)).toBeLessThanOrEqual(1);
  }
});

test('things that stand behind each other share a name', () => {
  expect(groupName(['C2', 'C10', 'C1'])).toBe('C1 to C10');
  expect(groupName(['C2', 'C1'])).toBe('C1, C2');
  expect(groupName(['C1'])).toBe('C1');
});
