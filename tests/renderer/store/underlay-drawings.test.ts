import { describe, expect, test, vi } from 'vitest';
import { addNote } from '#shared/commands/add-note';
import { type Answer, type Host, type JobState, answered, failed } from '#shared/host/contract';
import type { Plan, Underlay } from '#shared/model/plan';
import { encodeDrawing } from '#shared/underlay/encode-drawing';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { makeUnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const drawing = lineDrawing([[0, 0, 6, 0]]);
const running: JobState = { state: 'running', progress: 0.5, doing: 'Reading lines', problem: null };

/** Host that reads floor plans as told; any other call is a mistake of the test. */
function bench(read: Partial<Pick<Host, 'readUnderlay' | 'underlayResult'>> = {}, follow?: () => Promise<Answer<JobState>>) {
  const readUnderlay = vi.fn(read.readUnderlay ?? (async () => answered({ job: 'job-1' })));
  const known: Partial<Host> = {
    readUnderlay,
    underlayResult: read.underlayResult ?? (async () => ({ ok: true as const, value: { report: {} as never, bytes: encodeDrawing(drawing) } })),
  };
  const host = new Proxy(known, { get: (methods, name: keyof Host) => methods[name] ?? (() => { throw new Error(`${name} was not expected`); }) }) as Host;
  const drawings = makeUnderlayDrawings(host, async (_, __, onState) => {
    onState(running);
    return follow ? follow() : answered({ ...running, state: 'done' as const, progress: 1 });
  });
  return { drawings, readUnderlay };
}
const built = () => {
  const { plan } = planBuilder().underlay();
  const underlay = Object.values(plan.levels['level-0']?.underlays ?? {})[0];
  if (!underlay) throw new Error('The builder made an underlay.');
  return { plan, underlay };
};
/** Waits until a floor plan is read or has failed. */
const settled = (drawings: ReturnType<typeof bench>['drawings'], plan: Plan, underlay: Underlay): Promise<void> =>
  new Promise((done) => {
    const look = (): void => {
      const state = drawings.stateOf(plan, underlay)?.state;
      if (state === 'ready' || state === 'failed') {
        stop();
        done();
      }
    };
    const stop = drawings.subscribe(look);
    look();
  });

describe('floor plan drawings', () => {
  test('are read once through the host, with progress', async () => {
    const { drawings, readUnderlay } = bench();
    const { plan, underlay } = built();
    const seen: unknown[] = [];
    drawings.subscribe(() => seen.push(drawings.stateOf(plan, underlay)));
    expect(drawings.stateOf(plan, underlay)).toBeUndefined();
    drawings.want(plan);
    drawings.want(plan);
    await settled(drawings, plan, underlay);
    expect(readUnderlay).toHaveBeenCalledExactlyOnceWith({ sha256: 'a'.repeat(64), page: 1 });
    expect(seen).toMatchObject([{ state: 'loading', progress: 0 }, { state: 'loading', progress: 0.5, doing: 'Reading lines' }, { state: 'ready' }]);
    expect(drawings.find(plan, underlay)?.layers[0]?.segments).toEqual(drawing.layers[0]?.segments);
    expect(drawings.version()).toBe(3);
  });

  test('hidden ones are not read', () => {
    const { drawings, readUnderlay } = bench();
    const { plan, underlay } = built();
    underlay.visible = false;
    drawings.want(plan);
    expect(readUnderlay).not.toHaveBeenCalled();
  });

  test('what an import has read already is kept', () => {
    const { drawings, readUnderlay } = bench();
    const { plan, underlay } = built();
    drawings.keep('a'.repeat(64), 1, drawing);
    drawings.want(plan);
    expect(drawings.find(plan, underlay)).toBe(drawing);
    expect(readUnderlay).not.toHaveBeenCalled();
  });

  test('a failure keeps its problem and can be tried again', async () => {
    let isBroken = true;
    const { drawings, readUnderlay } = bench({ readUnderlay: async () => (isBroken ? failed('not-found', 'The file has gone.', '', 'Import it anew.') : answered({ job: 'job-1' })) });
    const { plan, underlay } = built();
    drawings.want(plan);
    await settled(drawings, plan, underlay);
    expect(drawings.stateOf(plan, underlay)).toMatchObject({ state: 'failed', problem: { what: 'The file has gone.' } });
    drawings.want(plan);
    expect(readUnderlay).toHaveBeenCalledTimes(1);
    isBroken = false;
    drawings.retry(plan, underlay);
    await settled(drawings, plan, underlay);
    expect(drawings.stateOf(plan, underlay)?.state).toBe('ready');
  });

  test('a job that fails, bytes that are damaged and a host that breaks off are problems, not crashes', async () => {
    const cases = [
      bench({}, async () => failed('damaged', 'The file is cut short.', '', 'Export it again.')),
      bench({ underlayResult: async () => answered({ report: {} as never, bytes: new Uint8Array([1, 2, 3]) }) }),
      bench({ readUnderlay: () => Promise.reject(new Error('gone')) }),
    ];
    for (const { drawings } of cases) {
      const { plan, underlay } = built();
      drawings.want(plan);
      await settled(drawings, plan, underlay);
      expect(drawings.stateOf(plan, underlay)?.state).toBe('failed');
    }
  });

  test('follow reads what a store shows, now and later', () => {
    const { drawings, readUnderlay } = bench();
    const store = makeStore(planBuilder().plan, startSession('test'));
    const stop = drawings.follow(store);
    expect(readUnderlay).not.toHaveBeenCalled();
    store.load(built().plan, null);
    expect(readUnderlay).toHaveBeenCalledTimes(1);
    stop();
    store.commit(addNote('level-0', { x: 0, y: 0 }, 'Ask'));
    expect(readUnderlay).toHaveBeenCalledTimes(1);
  });
});
