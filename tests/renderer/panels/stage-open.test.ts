import { evaluate } from '#shared/evaluate';
import { type Plan, newPlan, unknownRoom, unknownWall } from '#shared/model/plan';
import { blankProfile } from '#shared/profile/unit-profile';
import { describe, expect, test } from 'vitest';
import { blankLimitsOf, openInStages } from '../../../src-renderer/panels/stage-open.ts';

function planWith(height_m: number | null): Plan {
  const plan = newPlan('metric');
  const corner = (id: string, x: number, y: number) => ({ id, x, y, wall: unknownWall() });
  const level = plan.levels['level-0'];
  if (!level) throw new Error('no level');
  level.enclosures['room-1'] = {
    id: 'room-1',
    name: 'Room',
    outline: [corner('a', 0, 0), corner('b', 4, 0), corner('c', 4, 3), corner('d', 0, 3)],
    holes: [],
    height_m,
    slope: null,
    ceilingZones: {},
    underFloor: null,
    ceilingVoid: null,
    openings: {},
    temperature: null,
    altitude_m: null,
    occupancy: 'unknown',
    hazardClass: 'unknown',
    concentration_pct: null,
    ...unknownRoom(),
    adjacent: '',
  };
  return plan;
}
const openIn = (plan: Plan) => openInStages(plan, evaluate(plan));

describe('what is still open', () => {
  test('an empty plan has everything before it', () => {
    const open = openIn(newPlan('metric'));
    expect(Object.values(open).every(({ isDone }) => !isDone)).toBe(true);
    expect(open.survey.text).toBe('no enclosure yet');
  });

  test('an unknown height is open in Survey, a known one is done', () => {
    expect(openIn(planWith(null)).survey).toMatchObject({ text: '1 height unknown', isDone: false });
    expect(openIn(planWith(2.6)).survey).toMatchObject({ isDone: true });
  });

  test('blank limits count only for a profile that a network uses', () => {
    const plan = newPlan('metric');
    plan.profiles.mine = blankProfile('mine', 'Mine');
    expect(blankLimitsOf(plan)).toBe(0);
    plan.networks['network-1'] = { manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' }, id: 'network-1', name: 'Network 1', level: 'level-0', profile: 'mine', source: null, cylinders: {}, assembly: [], nodes: {}, pipes: {}, nozzles: {}, supports: {}, release: null };
    expect(blankLimitsOf(plan)).toBeGreaterThan(20);
    expect(openIn(plan).proof.text).toMatch(/limits blank$/);
  });

  test('a revision makes the sheets issued', () => {
    const plan = planWith(2.6);
    expect(openIn(plan).sheets).toMatchObject({ text: 'not issued', isDone: false });
    plan.info.revisions.push({ mark: 'B', date: '2026-01-01', text: 'For approval' });
    expect(openIn(plan).sheets).toMatchObject({ text: 'issued as B', isDone: true });
  });
});
