import { describe, expect, test } from 'vitest';
import { editRun } from '#shared/commands/edit-run';
import { insertPart } from '#shared/commands/insert-part';
import { derivePlan } from '#shared/derived/derive-plan';
import { pipesOfRun } from '#shared/model/pipe-run';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, networkIn, pipesAsText, refusal } from '../../support/try-command.ts';

/** Riser and main to a tee at (4,0), from there one run with a turn to N1 and one to N2. */
const tree = () =>
  planBuilder()
    .network()
    .run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(8, 0, 2.5), place3(8, 3, 2.5), place3(8, 3, 2.3)], '1')
    .nozzle(8, 3, 2.3)
    .run([place3(4, 0, 2.5), place3(4, 5, 2.5)], '1')
    .nozzle(4, 5, 2.5);
const pipeAt = (built: ReturnType<typeof tree>, x: number, y: number, z: number) => {
  const end = built.nodeAt(x, y, z).id;
  const found = Object.values(networkIn(built.plan).pipes).find(({ to }) => to === end);
  return { kind: 'pipe' as const, network: built.networkId, id: found?.id ?? '' };
};

describe('a run', () => {
  test('goes from branch or end to the next, turns included', () => {
    const built = tree();
    expect(pipesOfRun(networkIn(built.plan), pipeAt(built, 8, 3, 2.5).id)).toHaveLength(3);
    expect(pipesOfRun(networkIn(built.plan), pipeAt(built, 4, 0, 2.5).id)).toHaveLength(2);
    expect(pipesOfRun(networkIn(built.plan), pipeAt(built, 4, 5, 2.5).id)).toHaveLength(1);
    expect(pipesOfRun(networkIn(built.plan), 'gone')).toEqual([]);
  });
  test('changes its size as one, and the reducer follows', () => {
    const built = tree();
    const { next, label } = done(built.plan, editRun(pipeAt(built, 8, 3, 2.5), { size: '3/4', schedule: '80' }));
    expect(label).toBe('Edit run');
    const sizes = Object.values(networkIn(next).pipes).map(({ size, schedule }) => `${size} ${schedule}`);
    expect(sizes.filter((each) => each === '3/4 80')).toHaveLength(3);
    expect(sizes.filter((each) => each === '1 40')).toHaveLength(3);
    const reducers = derivePlan(next).networks[0]?.fittings.filter(({ kind }) => kind === 'reducer') ?? [];
    expect(reducers.map(({ at }) => [at.x, at.y])).toEqual([[4, 0]]);
    expect(refusal(built.plan, editRun(pipeAt(built, 8, 3, 2.5), { size: '7/8' as '1' }))).toContain('Size must be one of');
    expect(refusal(built.plan, editRun({ kind: 'pipe', network: built.networkId, id: 'gone' }, {}))).toContain('no longer');
  });
});

describe('a union', () => {
  test('stands where it is put, and the pipe is two', () => {
    const built = tree();
    const { next, created } = done(built.plan, insertPart(pipeAt(built, 4, 0, 2.5), place3(1.5, 0, 2.5), 'union'));
    expect(pipesAsText(networkIn(next))).toEqual(expect.arrayContaining(['0,0,2.5 → 1.5,0,2.5', '1.5,0,2.5 → 4,0,2.5']));
    expect(networkIn(next).nodes[created[0]?.id ?? '']).toMatchObject({ part: 'union', at: { x: 1.5, y: 0, z: 2.5 } });
    expect(derivePlan(next).networks[0]?.fittings.map(({ kind }) => kind)).toContain('union');
  });
  test.each([0, 4, -1, 9, Number.NaN])('at %d m it is refused', (along_m) => {
    const built = tree();
    expect(refusal(built.plan, insertPart(pipeAt(built, 4, 0, 2.5), place3(along_m, 0, 2.5), 'coupling'))).toMatch(/not on the pipe|too far off/);
  });
});
