import type { Host, Problem } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import { problemText } from '../plan-words.ts';
import { isChanged } from './unsaved.ts';
import type { Message, Store } from '../store/state.ts';

/** Longest time between a change and its being written aside [ms]. A second is promised; the rest is for the way. */
const KEEP_AFTER_ms = 600;

/** What sets a timer; the tests bring their own. */
export interface Clock {
  set(run: () => void, after_ms: number): unknown;
  clear(timer: unknown): void;
}

const WINDOW_CLOCK: Clock = {
  set: (run, after_ms) => setTimeout(run, after_ms),
  clear: (timer) => clearTimeout(timer as number),
};

/** Writes unsaved work aside while the user works. */
export interface RecoveryKeeper {
  /** Writes what is still waiting at once. */
  flush(): Promise<void>;
  stop(): void;
}

/**
 * Watches the store and hands every change to the host within a second of it: the first change after a
 * quiet time starts the wait, further ones do not prolong it. A failed write is tried again at the next look; the user
 * is told of the first one, and the notice goes by itself once writing works again.
 */
export function keepRecoveries(store: Store, host: Host, clock: Clock = WINDOW_CLOCK): RecoveryKeeper {
  let kept: Plan = store.get().history.present;
  let file = store.get().session.file;
  let timer: unknown = null;
  let isWriting = false;
  let notice: Message | null = null;

  const tellOf = (problem: Problem | null): void => {
    if (problem === null) {
      if (notice && store.get().session.message === notice) store.session({ message: null });
      notice = null;
    } else if (notice === null) {
      notice = { kind: 'problem', text: problemText(problem, 'What you change now is not kept aside.'), problem };
      store.session({ message: notice });
    }
  };
  const isBehind = (): boolean => store.get().history.present !== kept && isChanged(store.get());
  const wait = (): void => {
    timer ??= clock.set(() => {
      timer = null;
      void write();
    }, KEEP_AFTER_ms);
  };
  const write = async (): Promise<void> => {
    if (isWriting || !isBehind()) return;
    const { history, session } = store.get();
    isWriting = true;
    const answer = await host.keepRecovery({
      session: session.id,
      ref: session.file?.ref ?? null,
      name: session.file?.name || history.present.info.project || 'New plan',
      steps: Math.max(1, history.past.length - Math.max(0, session.file?.savedAtStep ?? 0)),
      plan: history.present,
    });
    isWriting = false;
    if (answer.ok) kept = history.present;
    tellOf(answer.ok ? null : answer.problem);
    if (isBehind()) wait();
  };

  const stop = store.subscribe(() => {
    const state = store.get();
    const isOtherFile = state.session.file !== file && state.history.past.length === 0 && state.history.future.length === 0;
    file = state.session.file;
    if (isOtherFile) kept = state.history.present;
    if (isBehind()) wait();
  });

  return {
    async flush() {
      if (timer !== null) clock.clear(timer);
      timer = null;
      await write();
    },
    stop() {
      if (timer !== null) clock.clear(timer);
      stop();
    },
  };
}
