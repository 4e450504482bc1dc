import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import { derivePlan } from '#shared/derived/derive-plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const FOOT_m = 0.3048;
const bench = (options = {}, plan = planBuilder('feet').plan) => toolBench(plan, { pipeHeight_m: 8 * FOOT_m, ...options }).use('pipe');

/** Ends of every pipe in feet, in the order in which they were laid. */
const pipes = (drawn: ToolBench): string[] =>
  Object.values(drawn.plan().networks)
    .flatMap(({ pipes: all, nodes }) => Object.values(all).map(({ from, to }) => [nodes[from]?.at, nodes[to]?.at]))
    .map((ends) => ends.map((at) => (at ? [at.x, at.y, at.z].map((value) => Number((value / FOOT_m).toFixed(4)) + 0).join(',') : '?')).join(' > '));
const fittings = (drawn: ToolBench) => derivePlan(drawn.plan()).networks.flatMap((network) => network.fittings.map(({ kind }) => kind));

describe('typed in words', () => {
  test('a run with riser and drop, from a typed place, without pointing', () => {
    const drawn = bench().say('x 30-9 y 10-0 at 7-0').say('up 0-10').say('west 25-9').say('up 1-4').say('north 9').say('down 5"').enter();
    expect(pipes(drawn)).toEqual(['30.75,10,7 > 30.75,10,7.8333', '30.75,10,7.8333 > 5,10,7.8333', '5,10,7.8333 > 5,10,9.1667', '5,10,9.1667 > 5,19,9.1667', '5,19,9.1667 > 5,19,8.75']);
  });
  test('on to a distance from the origin, the other one kept', () => {
    expect(pipes(bench().click(0, 0).say('x 10-0').say('y 4-6').enter())).toEqual(['0,0,8 > 10,0,8', '10,0,8 > 10,4.5,8']);
  });
  test('left and right of the run', () => {
    expect(pipes(bench().click(0, 0).say('east 10').say('left 3').say('right 2').enter())).toEqual(['0,0,8 > 10,0,8', '10,0,8 > 10,3,8', '10,3,8 > 12,3,8']);
    expect(bench().click(0, 0).say('left 3').refusal()).toContain('runs along');
  });
  test('up and down count from where the pipe ends', () => {
    expect(pipes(bench().click(0, 0).say('east 4').say('down 3"').say('up 1-3').enter())).toEqual(['0,0,8 > 4,0,8', '4,0,8 > 4,0,9']);
  });
});

describe('45° offsets', () => {
  test('12 in to the left: two 45° elbows, travel 16.971 in, and the run goes on in its direction', () => {
    const drawn = bench().click(0, 0).say('east 10').say('offset 12" left').type({ length: 5 * FOOT_m }).enter();
    expect(pipes(drawn)).toEqual(['0,0,8 > 10,0,8', '10,0,8 > 11,1,8', '11,1,8 > 16,1,8']);
    expect(fittings(drawn).filter((kind) => kind === 'elbow-45')).toHaveLength(2);
    const travel = derivePlan(drawn.plan()).networks[0]?.pipes[1]?.length_m ?? 0;
    expect((travel / FOOT_m) * 12).toBeCloseTo(16.971, 3);
  });
  test('rolling, up and down, and out of a riser', () => {
    expect(pipes(bench().click(0, 0).say('east 10').say('offset 5" left 12" up').say('east 2').enter())[1]).toBe('10,0,8 > 11.0833,0.4167,9');
    expect(pipes(bench().click(0, 0).say('east 10').say('offset 6" down').enter())[1]).toBe('10,0,8 > 10.5,0,7.5');
    const riser = bench().click(0, 0).say('up 2').say('offset 12" north').say('up 2').enter();
    expect(pipes(riser)).toEqual(['0,0,8 > 0,0,10', '0,0,10 > 0,1,11', '0,1,11 > 0,1,13']);
    expect(fittings(riser).filter((kind) => kind === 'elbow-45')).toHaveLength(2);
  });
  test('toward the pointer where no side is said', () => {
    expect(pipes(bench().click(0, 0).say('east 10').move(4, -2).say('offset 12"').enter())[1]).toBe('10,0,8 > 11,-1,8');
  });
  test('are refused without a run before them and without a side', () => {
    expect(bench().click(0, 0).say('offset 12" left').refusal()).toContain('piece before');
    expect(bench().click(0, 0).say('east 10').say('offset 12"').refusal()).toContain('which side');
    expect(bench().click(0, 0).say('up 2').say('offset 12" left').refusal()).toContain('upright');
    expect(bench().click(0, 0).say('east 10').say('offset 12" east').refusal()).toContain('to the side');
  });
});

describe('a run that falls', () => {
  const FALL = 0.25 / 120;
  test('1/4 in in 10 ft, over turns, and is still 90° to its fittings', () => {
    const drawn = bench({ pipeFall: FALL }).click(0, 0).say('east 20').say('north 20').say('down 1').enter();
    expect(pipes(drawn)).toEqual(['0,0,8 > 20,0,7.9583', '20,0,7.9583 > 20,20,7.9167', '20,20,7.9167 > 20,20,6.9167']);
    expect(fittings(drawn)).toEqual(['elbow-90', 'elbow-90', 'cap']);
  });
  test('comes to pipe that lies where the fall brings it, without a stub', () => {
    const built = planBuilder('feet').network().run([place3(0, 0, 8 * FOOT_m), place3(0, 2, 8 * FOOT_m)]).run([place3(3, -1, 7.95 * FOOT_m), place3(3, 1, 7.95 * FOOT_m)]);
    const drawn = bench({ pipeFall: FALL }, built.plan).click(0, 0).click(3, 0);
    expect(pipes(drawn)).toContain(`0,0,8 > ${Number((3 / FOOT_m).toFixed(4))},0,7.95`);
  });
});

describe('following walls', () => {
  const L = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 2), planPoint(3, 2), planPoint(3, 4), planPoint(0, 4)];
  const room = () => planBuilder('feet').outline(L, 3).plan;
  const metres = (drawn: ToolBench) => pipes(drawn).map((line) => line.split(' > ').map((place) => place.split(',').slice(0, 2).map((value) => Number((Number(value) * FOOT_m).toFixed(3))).join(',')).join(' > '));
  test('keeps its distance and turns in the corners', () => {
    const drawn = bench({ pipeFollow_m: 0.5 }, room()).click(1, 0.7).click(5.4, 1.2).enter();
    expect(metres(drawn)).toEqual(['1,0.5 > 5.5,0.5', '5.5,0.5 > 5.5,1.2']);
  });
  test('goes a typed length round the corner', () => {
    const drawn = bench({ pipeFollow_m: 0.5 }, room()).click(4, 0.6).move(5.6, 1).type({ length: 2 }).enter();
    expect(metres(drawn)).toEqual(['4,0.5 > 5.5,0.5', '5.5,0.5 > 5.5,1']);
  });
  test('says when there is no wall, and where it is too narrow', () => {
    expect(bench({ pipeFollow_m: 0.5 }).click(1, 1).refusal()).toContain('no wall');
    expect(bench({ pipeFollow_m: 2.5 }, room()).click(1, 1).refusal()).toContain('too close');
  });
});

describe('below the ceiling', () => {
  const heights = (drawn: ToolBench) => Object.values(Object.values(drawn.plan().networks)[0]?.nodes ?? {}).map(({ at }) => Number(at.z.toFixed(4)));
  test('at a typed drop under the slab', () => {
    expect(heights(bench({ pipeDrop_m: 0.3 }, planBuilder().room(6, 4, 2.7).plan).click(1, 1).click(4, 1).enter())).toEqual([2.4, 2.4]);
  });
  test('passes the step to a zone at the lower side', () => {
    const plan = planBuilder().room(6, 4, 2.7).ceilingZone([planPoint(3, 0), planPoint(6, 0), planPoint(6, 4), planPoint(3, 4)], 2.4).plan;
    expect(heights(bench({ pipeDrop_m: 0.3 }, plan).click(1, 1).click(5, 1).enter())).toEqual([2.4, 2.1, 2.1]);
    expect(heights(bench({ pipeDrop_m: 0.3 }, plan).click(5, 1).click(1, 1).enter())).toEqual([2.1, 2.1, 2.4]);
  });
  test('runs along under a slope', () => {
    const plan = planBuilder().room(6, 4, 2.7, { x: 0, y: 0 }, { slope: { at: { x: 0, y: 0 }, direction_rad: 0, rise: 0.01 } }).plan;
    expect(heights(bench({ pipeDrop_m: 0.3 }, plan).click(1, 1).click(5, 1).enter())).toEqual([2.41, 2.45]);
  });
  test('where the ceiling is unknown it says so and takes the plain height', () => {
    const drawn = bench({ pipeDrop_m: 0.3, pipeHeight_m: 2.2 }, planBuilder().room(6, 4, null).plan).click(1, 1).move(4, 1);
    expect(drawn.runner.look().sketch.labels?.[0]?.text).toContain('Ceiling not known here');
    expect(heights(drawn.click(4, 1).enter())).toEqual([2.2, 2.2]);
  });
  test('a typed height ends it', () => {
    expect(heights(bench({ pipeDrop_m: 0.3 }, planBuilder().room(6, 4, 2.7).plan).click(1, 1).type({ height: 2 }).click(4, 1).enter())).toEqual([2.4, 2, 2]);
  });
});

describe('branching', () => {
  const main = () => planBuilder('feet').network().run([place3(0, 0, 8 * FOOT_m), place3(20 * FOOT_m, 0, 8 * FOOT_m)]).plan;
  test.each([
    ['up', 'up 1', '10,0,8 > 10,0,9'],
    ['down', 'down 1', '10,0,8 > 10,0,7'],
    ['sideways', 'north 3', '10,0,8 > 10,3,8'],
  ])('from the middle of a pipe %s', (_, words, pipe) => {
    const drawn = bench({ pipeSize: '1/2' }, main()).click(10 * FOOT_m, 0).say(words).enter();
    expect(pipes(drawn)).toContain(pipe);
    expect(fittings(drawn)).toEqual(expect.arrayContaining(['tee', 'reducer']));
  });
});
