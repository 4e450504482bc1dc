import { command } from '#shared/commands/command';
import { type Host, type RequestOf, answered, failed } from '#shared/host/contract';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { type Clock, keepRecoveries } from '../../../src-renderer/actions/keep-recoveries.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';

const note = command('Write a note', (draft, text: string) => {
  draft.info.notes = text;
});

/** A clock that runs only when told to. */
function handClock() {
  const waiting: { run: () => void; after_ms: number }[] = [];
  const clock: Clock = {
    set(run, after_ms) {
      const entry = { run, after_ms };
      waiting.push(entry);
      return entry;
    },
    clear: (timer) => void waiting.splice(waiting.indexOf(timer as (typeof waiting)[number]), 1),
  };
  const tick = (): void => {
    for (const { run } of waiting.splice(0)) run();
  };
  return { clock, waiting, tick };
}

function openWindow(isReachable = () => true) {
  const store = makeStore(newPlan('metric'), startSession('test'));
  const kept: RequestOf<'keepRecovery'>[] = [];
  const host = {
    keepRecovery: async (request: RequestOf<'keepRecovery'>) => {
      if (!isReachable()) return failed('failed', 'Gone.', '', '');
      kept.push(request);
      return answered(null);
    },
  } as unknown as Host;
  const hand = handClock();
  const keeper = keepRecoveries(store, host, hand.clock);
  return { store, kept, keeper, ...hand };
}
const settled = () => new Promise<void>((done) => setImmediate(done));

describe('keeping unsaved work aside', () => {
  test('a change is written within a second, once, as it stands then', async () => {
    const { store, kept, waiting, tick } = openWindow();
    store.commit(note('one'));
    store.commit(note('two'));
    expect(waiting).toHaveLength(1);
    expect(waiting[0]?.after_ms).toBeLessThanOrEqual(1000);
    tick();
    await settled();
    expect(kept.map(({ plan, steps }) => [plan.info.notes, steps])).toEqual([['two', 2]]);
    expect(waiting).toHaveLength(0);
  });

  test('a write that fails is tried again', async () => {
    let isReachable = false;
    const { store, kept, waiting, tick } = openWindow(() => isReachable);
    store.commit(note('one'));
    tick();
    await settled();
    expect(kept).toHaveLength(0);
    expect(waiting).toHaveLength(1);
    isReachable = true;
    tick();
    await settled();
    expect(kept).toHaveLength(1);
  });

  test('the user is told once that work is not kept aside, and no longer when it is', async () => {
    let isReachable = false;
    const { store, tick } = openWindow(() => isReachable);
    const notice = () => store.get().session.message;
    store.commit(note('one'));
    tick();
    await settled();
    expect(notice()).toMatchObject({ kind: 'problem', text: expect.stringContaining('not kept aside') });
    store.session({ message: null });
    tick();
    await settled();
    expect(notice()).toBeNull();
    isReachable = true;
    tick();
    await settled();
    isReachable = false;
    store.commit(note('two'));
    tick();
    await settled();
    expect(notice()).not.toBeNull();
    isReachable = true;
    tick();
    await settled();
    expect(notice()).toBeNull();
  });

  test('moving the view or opening a plan writes nothing', async () => {
    const { store, waiting } = openWindow();
    store.session({ stage: 'proof' });
    store.load(newPlan('metric'), { ref: 'a', name: 'a.nzw', stamp: '1', savedAtStep: 0, openElsewhere: null });
    expect(waiting).toHaveLength(0);
  });

  test('leaving writes what still waits at once', async () => {
    const { store, kept, keeper, waiting } = openWindow();
    store.commit(note('one'));
    await keeper.flush();
    expect(kept).toHaveLength(1);
    expect(waiting).toHaveLength(0);
  });
});
