import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import { placeView } from '#shared/commands/place-view';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { composeAndPrint } from '../../../src-main/services/compose-and-print.ts';
import { type FieldRooms, keepRooms, keptRooms, layoutDigest } from '../../../src-main/services/kept-rooms.ts';
import { printInThread } from '../../../src-main/services/print-thread.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { done } from '../../support/try-command.ts';

const hut = async (): Promise<Plan> => (await buildDemo('F1')).plan;
const order = (plan: Plan) => ({ plan, choice: { paper: 'auto', scale: 'auto', set: 'field' } as const, drawings: new Map<string, Uint8Array>(), attached: new Uint8Array(), now: TEST_TIME });
const nothing = () => undefined;
const go = new AbortController().signal;

test('what is kept of a layout prints the same bytes as what is worked out', async () => {
  const plan = await hut();
  let found: FieldRooms | undefined;
  const worked = await composeAndPrint(order(plan), nothing, undefined, (rooms) => {
    found = rooms;
  });
  expect(found?.size).toBe(1);
  // As it crosses from the printing thread.
  const kept = structuredClone(found);
  const again = await composeAndPrint({ ...order(plan), ...(kept ? { rooms: kept } : {}) }, nothing, undefined, () => expect.fail('Worked out once more.'));
  expect(Buffer.from(again).equals(Buffer.from(worked))).toBe(true);
});

test('a revision and the ways sheets lie leave the layout as it was; a nozzle that moves, the basis and the lengths do not', async () => {
  const plan = await hut();
  const digest = layoutDigest(plan);
  expect(layoutDigest(done(plan, addRevision({ mark: 'A', date: '2026-03-04', text: 'For approval' })).next)).toBe(digest);
  expect(layoutDigest(done(plan, placeView('plan', { scale: 100 })).next)).toBe(digest);
  const [nozzle] = derivePlan(plan).nozzles;
  if (!nozzle?.at) throw new Error('The hut has no nozzle.');
  expect(layoutDigest(done(plan, moveNozzle(nozzle.ref, { ...nozzle.at, x: nozzle.at.x + 0.01 })).next)).not.toBe(digest);
  expect(layoutDigest({ ...plan, basis: { ...plan.basis, pipeRoughness_m: 0.001 } })).not.toBe(digest);
  expect(layoutDigest({ ...plan, settings: { ...plan.settings, lengths: 'metric' } })).not.toBe(digest);
});

test('the printing thread is given what it told before', async () => {
  const file = join(tempFolder(), 'worker.mjs');
  writeFileSync(file, "import { parentPort, workerData } from 'node:worker_threads'; if (!workerData.rooms) parentPort.postMessage({ kind: 'rooms', rooms: new Map([['told', { isKnown: false, because: 'once' }]]) }); parentPort.postMessage({ kind: 'done', pdf: new Uint8Array([workerData.rooms ? workerData.rooms.size : 0]) });");
  const plan: Plan = { ...(await hut()), nextSerial: 777, waivers: {}, levels: {} };
  expect([...(await printInThread(order(plan), nothing, go, file))]).toEqual([0]);
  expect([...(await printInThread(order(plan), nothing, go, file))]).toEqual([1]);
});

test('four layouts are kept, the newest', () => {
  for (const digest of ['a', 'b', 'c', 'd', 'a', 'e']) keepRooms(digest, new Map());
  expect(['a', 'b', 'c', 'd', 'e'].filter((digest) => keptRooms(digest) !== undefined)).toEqual(['a', 'c', 'd', 'e']);
});
