import { createDraft, finishDraft } from 'immer';
import { describe, expect, test } from 'vitest';
import { copyNetwork, copyNetworkParts } from '#shared/commands/copy-network';
import { copyOf } from '#shared/commands/copy-of';
import type { Mapping } from '#shared/commands/map-things';
import type { Plan, Ref } from '#shared/model/plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { only } from '../../support/try-command.ts';

const east: Mapping = { point: ({ x, y }) => ({ x: x + 9, y }), direction: (angle_rad) => angle_rad, isMirrored: false, isShift: true };
const built = planBuilder()
  .network()
  .cylinder(0.2, 2, Math.PI)
  .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(2, 2, 2.5)])
  .nozzle(2, 2, 2.5);
const network = only(built.plan.networks);
const pipes = Object.keys(network.pipes).map((id): Ref => ({ kind: 'pipe', network: network.id, id }));

function copied(parts: readonly Ref[], onto: string | null = null): Plan {
  const draft = createDraft(built.plan);
  copyNetworkParts(draft, parts, onto, east, new Map());
  return finishDraft(draft);
}

describe('copying parts of a network', () => {
  test('a cylinder alone joins its bank, and so does pipe that does not begin on it', () => {
    for (const parts of [[built.inNetwork('cylinder')], pipes.slice(1)] as const) expect(Object.keys(copied(parts).networks)).toEqual([network.id]);
  });
  test('a cylinder with the pipe that begins on it is fed by itself', () => {
    const copy = Object.values(copied([built.inNetwork('cylinder'), ...pipes]).networks)[1];
    expect(copy?.nodes[copy.source ?? '']?.at).toEqual({ x: 9.2, y: 2, z: 2 });
  });
  test('pipe on another level has no source there, and hangs on no cylinder of another floor', () => {
    const copy = Object.values(copied(pipes.slice(1), 'elsewhere').networks)[1];
    expect(copy).toMatchObject({ level: 'elsewhere', source: null, cylinders: {} });
  });
  test('a whole network is copied with its cylinders, assembly and source', () => {
    const draft = createDraft(built.plan);
    copyNetwork(draft, draft.networks[network.id] ?? network, 'elsewhere', east, new Map());
    const copy = Object.values(finishDraft(draft).networks)[1];
    expect(copy?.assembly.map(({ kind }) => kind)).toEqual(network.assembly.map(({ kind }) => kind));
    expect(copy?.nodes[copy.source ?? '']?.at.x).toBeCloseTo(9.2, 9);
    expect(only(copy?.nozzles ?? {}).name).toBe('N2');
  });
});

test('a copy shares nothing with the first', () => {
  const first = { at: { x: 1 } };
  const copy = copyOf(first);
  copy.at.x = 2;
  expect(first.at.x).toBe(1);
});
