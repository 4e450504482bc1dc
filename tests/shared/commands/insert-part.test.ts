import { expect, test } from 'vitest';
import { insertPart } from '#shared/commands/insert-part';
import { planBuilder, place3 as p } from '../../support/plan-builder.ts';

const built = () => planBuilder().room(6, 4, 2.7).network().run([p(1, 2, 2), p(5, 2, 2)]);

test('a union parts the pipe, and both halves are of its make', () => {
  const start = built();
  const outcome = insertPart(start.inNetwork('pipe'), p(2, 2, 2), 'union')(start.plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  const network = outcome.next.networks[start.networkId];
  const [created] = outcome.created;
  expect(created).toMatchObject({ kind: 'node' });
  expect(network?.nodes[created?.id ?? '']).toMatchObject({ part: 'union', at: { x: 2, y: 2, z: 2 } });
  expect(Object.values(network?.pipes ?? {}).map(({ size, measured_m }) => [size, measured_m])).toEqual([
    ['3/4', null],
    ['3/4', null],
  ]);
});

test.each([
  ['at its end', p(1, 2, 2)],
  ['beside it', p(2, 3, 2)],
])('refuses a place %s', (_, at) => {
  const start = built();
  expect(insertPart(start.inNetwork('pipe'), at, 'union')(start.plan)).toMatchObject({ ok: false });
});
