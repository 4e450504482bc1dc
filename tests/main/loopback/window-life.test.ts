import { describe, expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import type { Loopback } from '../../../src-main/loopback/server.ts';
import { goodOf } from '../../support/hosts.ts';
import { enter, hostAt, loopbackIn } from '../../support/loopback.ts';
import { tempFolder } from '../../support/temp-folder.ts';

/** Opens the stream that a window keeps open; answers how to let go of it. */
async function stay(loopback: Loopback, cookie: string, window: string): Promise<() => void> {
  const leave = new AbortController();
  const response = await fetch(`${loopback.origin}/alive?window=${window}`, { headers: { Cookie: cookie }, signal: leave.signal });
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('text/event-stream');
  return () => leave.abort();
}

/** Asks again until it holds: the host hears of a closed stream when the system tells it. */
async function until(holds: () => Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setImmediate(resolve));
}

describe('life of a window', () => {
  test('the program ends when its only window has gone and does not come back', async () => {
    let ended = false;
    const loopback = await loopbackIn(tempFolder(), {
      grace_ms: 0,
      onGone: () => {
        ended = true;
      },
    });
    const cookie = await enter(loopback);
    (await stay(loopback, cookie, 'w1'))();
    await until(async () => ended);
  });

  test('it stays while another window is there, and when the window was only reloaded', async () => {
    const folder = tempFolder();
    let ended = 0;
    const loopback = await loopbackIn(folder, {
      grace_ms: 0,
      onGone: () => {
        ended += 1;
      },
    });
    const cookie = await enter(loopback);
    const leaveFirst = await stay(loopback, cookie, 'w1');
    const leaveSecond = await stay(loopback, cookie, 'w2');
    leaveFirst();
    const leaveReloaded = await stay(loopback, cookie, 'w3');
    leaveSecond();
    expect(ended).toBe(0);
    expect(goodOf(await hostAt(loopback, cookie, 'w3').info({})).host).toBe('loopback');
    leaveReloaded();
    await until(async () => ended > 0);
    expect(ended).toBe(1);
  });

  test('a reloaded window is offered its unsaved work, and the plan is free', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    const leave = await stay(loopback, cookie, 'w1');
    const before = hostAt(loopback, cookie, 'w1');
    const { ref } = goodOf(await before.pickPlanPlace({ name: 'hut' }));
    goodOf(await before.savePlan({ session: 's1', ref, plan: newPlan(), stamp: null, overwrite: false }));
    goodOf(await before.keepRecovery({ session: 's1', ref, name: 'hut', steps: 2, plan: { ...newPlan(), nextSerial: 7 } }));
    const after = hostAt(loopback, cookie, 'w2');
    expect(goodOf(await after.listRecoveries({})).recoveries).toEqual([]);
    leave();
    await until(async () => goodOf(await after.listRecoveries({})).recoveries.length > 0);
    const opened = goodOf(await after.openRecovery({ session: 's2', id: 's1' }));
    expect(opened.plan.nextSerial).toBe(7);
    expect(opened.openElsewhere).toBeNull();
  });
});
