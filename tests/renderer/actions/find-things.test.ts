import { expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { findThings } from '../../../src-renderer/actions/find-things.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder()
  .room(6, 4, 2.7, undefined, { name: 'Relay room' })
  .device('manual-release', 1, 1, { name: 'MR1' })
  .device('detector', 2, 1, { name: 'D1' })
  .device('detector', 3, 1, { name: 'D12' })
  .adjoining('corridor', rectangle(2, 2), { name: 'West corridor' })
  .obstruction('live-part', rectangle(1, 1), 0, 1, { name: 'Busbar' });
const names = (typed: string) => findThings(built.plan, typed).map(({ name }) => name);

test('things answer to their names and to what they are', () => {
  expect(names('mr1')).toEqual(['Manual release MR1']);
  expect(names('D1')).toEqual(['Detector D1', 'Detector D12']);
  expect(names('detector')).toEqual(['Detector D1', 'Detector D12']);
  expect(names('west')).toEqual(['West corridor']);
  expect(names('relay')).toEqual(['Relay room']);
  expect(names('bus')).toEqual(['Live part Busbar']);
});

test('a single letter, and letters that only lie scattered, find nothing', () => {
  expect(names('d')).toEqual([]);
  expect(names('wcr')).toEqual([]);
});
