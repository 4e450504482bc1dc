import { expect, test } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import { derivePlan } from '#shared/derived/derive-plan';
import { bothSubjects } from '#shared/rules/both-subjects';
import { perLevel, perNetwork } from '#shared/rules/subjects';
import { doorRoom } from '../../support/door-room.ts';

test('subjects of two kinds of owners are asked one after the other, and never mixed up', () => {
  const both = bothSubjects(
    perLevel(({ level }) => [{ subject: level.name, ref: { kind: 'plan', id: 'plan' }, name: level.name }]),
    perNetwork(({ ref, network }) => [{ subject: network.name, ref, name: network.name }]),
  );
  const derived = derivePlan(doorRoom([]));
  const owners = both.owners(derived, designOf(derived, () => undefined));
  expect(owners.flatMap((owner) => both.of(owner)).map(({ name }) => name)).toEqual(['Level 1', 'Network 1']);
  expect(new Set(owners.map((owner) => both.keyOf(owner))).size).toBe(2);
});
