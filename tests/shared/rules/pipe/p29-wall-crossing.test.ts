import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPenetration } from '#shared/commands/add-penetration';
import { applyCure } from '#shared/commands/apply-cure';
import { editOpening } from '#shared/commands/edit-opening';
import { setSleeve } from '#shared/commands/set-sleeve';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Opening, Plan } from '#shared/model/plan';
import { sleeveFor_m } from '#shared/profile/sleeve-size';
import { p29WallCrossing as rule } from '#shared/rules/pipe/p29-wall-crossing';
import { anyPlacing, at3, check, checkOne, placedLayout } from '../../../support/layout.ts';
import { place3, planBuilder } from '../../../support/plan-builder.ts';
import { done, refusal } from '../../../support/try-command.ts';

/** ASME B36.10M: NPS 3/4 is 1.050 in outside; with 1/4 in of room the sleeve is at least 1.300 in inside. */
const LEAST_m = 1.3 * 0.0254;
const whole = { sleeve_m: 0.035, rating: '1 h', seal: 'System 12' };

/** From outside through the west wall of a room 6 × 4 m at y = 2, 2.5 m up, to a nozzle. */
const through = (change: Partial<Opening> | null, places: readonly PlanPoint3[] = [place3(-1, 2, 2.5), place3(3, 2, 2.5)], room: Parameters<ReturnType<typeof planBuilder>['room']>[4] = {}) => {
  const built = planBuilder().room(6, 4, 2.7, { x: 0, y: 0 }, room);
  if (change) built.opening(3, 2, 0.1, { name: 'Sleeve 1', kind: 'penetration', bottom_m: 2.45, height_m: 0.1, swing: 'none', crossing: whole, ...change });
  return built.network().run(places);
};
const verdictOf = (change: Partial<Opening> | null) => checkOne(rule, through(change).plan);

describe('P29', () => {
  test.each<[string, Partial<Opening>, string]>([
    ['a sleeve at the limit', { crossing: { ...whole, sleeve_m: LEAST_m } }, 'ok'],
    ['a sleeve just larger', { crossing: { ...whole, sleeve_m: LEAST_m + 1e-6 } }, 'ok'],
    ['a sleeve just too small', { crossing: { ...whole, sleeve_m: LEAST_m - 1e-6 } }, 'stop'],
    ['no sleeve', { crossing: { ...whole, sleeve_m: null } }, 'stop'],
    ['no rating', { crossing: { ...whole, rating: ' ' } }, 'stop'],
    ['no seal', { crossing: { ...whole, seal: '' } }, 'stop'],
    ['nothing said', { crossing: null, undercut_m: null, ventPath: [] }, 'stop'],
    ['the pipe at the edge of the hole', { along_m: 1.95 }, 'ok'],
    ['the pipe beside the hole', { along_m: 1.949 }, 'stop'],
    ['the pipe at its lower edge', { bottom_m: 2.5 }, 'ok'],
    ['the pipe below it', { bottom_m: 2.501 }, 'stop'],
    ['a door instead', { kind: 'door', crossing: null, undercut_m: null, ventPath: [] }, 'stop'],
  ])('%s', (_, change, verdict) => {
    expect(verdictOf(change).verdict).toBe(verdict);
  });

  test('says which wall, and what is missing', () => {
    expect(verdictOf(null).text).toBe('Goes through wall 4 of Room 1, where no penetration is drawn: nothing says its sleeve, the rating of the wall and what seals it. Draw it.');
    expect(verdictOf({ crossing: { sleeve_m: 0.05, rating: '', seal: '' } }).text).toBe('In wall 4 of Room 1, “Sleeve 1” does not say the rating of the wall, nor what seals it. Enter it with the opening.');
    expect(verdictOf({ crossing: null, undercut_m: null, ventPath: [] }).subject.kind).toBe('opening');
    expect(verdictOf({ crossing: { ...whole, sleeve_m: 0.03 } }).text).toBe('The sleeve in wall 4 of Room 1 is 30 mm inside; 3/4 in pipe needs 33 mm. Choose a larger one.');
  });

  test('insulation goes through the wall too', () => {
    const built = through({ crossing: { ...whole, sleeve_m: LEAST_m + 0.02 } });
    for (const pipe of Object.values(built.plan.networks[built.networkId]?.pipes ?? {})) pipe.insulation_m = 0.0101;
    expect(checkOne(rule, built.plan).verdict).toBe('stop');
  });

  test('pipe inside the room, over its lid, along its wall and up to it crosses nothing', () => {
    for (const places of [
      [place3(1, 2, 2.5), place3(3, 2, 2.5)],
      [place3(-1, 2, 3), place3(3, 2, 3)],
      [place3(0, 1, 2.5), place3(0, 3, 2.5)],
      [place3(0, 2, 2.5), place3(3, 2, 2.5)],
      [place3(3, 2, 2.5), place3(0, 2, 2.5)],
      [place3(1, 2, 2.5), place3(0, 2, 2.5), place3(1, 3, 2.5)],
    ]) {
      expect(checkOne(rule, through(null, places).plan)).toMatchObject({ verdict: 'ok', text: 'Its pipe goes through no wall and no slab.' });
    }
  });

  test('a node in the wall, a corner, a wall seen twice and a lid that nobody knows hide no crossing', () => {
    expect(check(rule, through(null, [place3(-1, 2, 2.5), place3(0, 2, 2.5), place3(3, 2, 2.5)]).plan)).toHaveLength(1);
    expect(check(rule, through(null, [place3(-1, -1, 2.5), place3(1, 1, 2.5)]).plan).map(({ verdict }) => verdict)).toEqual(['stop']);
    const twice = check(rule, through(null, [place3(-1, 2, 2.5), place3(3, 2, 2.5), place3(3, 1, 2.5), place3(-1, 1, 2.5)]).plan);
    expect(new Set(twice.map(({ name }) => name)).size).toBe(2);
    expect(checkOne(rule, through(null, [place3(-1, 2, 9), place3(3, 2, 9)], { height_m: null }).plan).verdict).toBe('stop');
  });

  test('the two faces of a wall between rooms are one crossing, and a hole in either of them will do', () => {
    const between = (wall: number | null) => {
      const built = planBuilder().room(6, 4, 2.7, { x: 0, y: 0 });
      if (wall === 1) built.opening(1, 2, 0.1, { name: 'Sleeve 1', kind: 'penetration', bottom_m: 2.45, height_m: 0.1, crossing: whole });
      built.room(6, 4, 2.7, { x: 6.15, y: 0 });
      if (wall === 3) built.opening(3, 2, 0.1, { name: 'Sleeve 1', kind: 'penetration', bottom_m: 2.45, height_m: 0.1, crossing: whole });
      return checkOne(rule, built.network().run([place3(1, 2, 2.5), place3(9, 2, 2.5)]).plan);
    };
    expect(between(1).verdict).toBe('ok');
    expect(between(3).verdict).toBe('ok');
    expect(between(null).text).toContain('wall 2 of Room 1 and wall 4 of Room 2');
  });

  test('through a slab nothing can be drawn; a raised floor and a hanging ceiling are no slab', () => {
    const down = [place3(2, 2, 2.5), place3(2, 2, -0.2)];
    expect(checkOne(rule, through(null, down).plan)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('the floor of Room 1') });
    expect(checkOne(rule, through(null, down, { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } }).plan).verdict).toBe('ok');
    const up = [place3(2, 2, 2.5), place3(2, 2, 2.9)];
    expect(checkOne(rule, through(null, up).plan).text).toContain('the ceiling of Room 1');
    expect(checkOne(rule, through(null, up, { ceilingVoid: { depth_m: 0.3, isProtected: true, exclusion: null } }).plan).verdict).toBe('ok');
    expect(checkOne(rule, through(null, [place3(-1, 2, -0.2), place3(2, 2, -0.2)], { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } }).plan).verdict).toBe('stop');
  });

  test('its cure draws the hole with its sleeve in one step; rating and seal stay to be said', () => {
    const { plan } = through(null);
    const { cure } = checkOne(rule, plan);
    expect(cure).toMatchObject({ kind: 'add-penetration', sleeve_m: sleeveFor_m('3/4', 0) });
    if (!cure) return;
    const { next, created } = done(plan, applyCure(cure));
    const [opening] = created;
    expect(checkOne(rule, next)).toMatchObject({ subject: { kind: 'opening' }, text: expect.stringContaining('does not say the rating of the wall, nor what seals it') });
    if (opening?.kind !== 'opening') throw new Error('It made an opening.');
    const said = done(next, editOpening(opening, { crossing: { sleeve_m: sleeveFor_m('3/4', 0), rating: '1 h', seal: 'System 12' } })).next;
    expect(checkOne(rule, said).verdict).toBe('ok');
  });

  test('a sleeve that is too small is changed in one step', () => {
    const { plan } = through({ crossing: { ...whole, sleeve_m: 0.02 } });
    const { cure } = checkOne(rule, plan);
    expect(cure?.text).toBe('Take a sleeve of 35 mm inside');
    if (cure) expect(checkOne(rule, done(plan, applyCure(cure)).next).verdict).toBe('ok');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const laid = (x: number): Plan => placedLayout({ runs: [{ places: [at3(x, 2, 2.5), at3(3, 2, 2.5)] }] }, placing);
        expect(checkOne(rule, laid(-0.01)).verdict).toBe('stop');
        expect(checkOne(rule, laid(0.01)).verdict).toBe('ok');
      }),
      { numRuns: 30 },
    );
  });
});

describe('a sleeve', () => {
  test('is Schedule 40 pipe two sizes larger, or as many more as leave room', () => {
    // ASME B36.10M, Schedule 40: NPS 1-1/4 is 1.380 in inside, NPS 1-1/2 1.610 in, NPS 1 1.049 in.
    expect(sleeveFor_m('3/4', 0)).toBeCloseTo(1.38 * 0.0254, 5);
    expect(sleeveFor_m('1', 0)).toBeCloseTo(1.61 * 0.0254, 5);
    expect(sleeveFor_m('1/2', 0)).toBeCloseTo(1.38 * 0.0254, 5);
    expect(sleeveFor_m('4', 0)).toBeCloseTo(6.5 * 0.0254, 5);
    expect(sleeveFor_m('3/4', 0.025)).toBeGreaterThan(1.05 * 0.0254 + 0.05);
  });

  test('is refused where it is nothing or wider than its wall', () => {
    const built = through({});
    expect(refusal(built.plan, addPenetration(built.wall(3), 2, 2.5, 0))).toContain('more than 0');
    expect(refusal(built.plan, addPenetration(built.wall(3), 2, 2.5, 5))).toContain('would no longer fit');
    expect(refusal(built.plan, setSleeve(built.lastOpening, 0))).toContain('more than 0');
  });
});
