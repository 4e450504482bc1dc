import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { makeWindowHosts } from '../../../src-main/loopback/window-hosts.ts';
import type { LocalHost } from '../../../src-main/services/local-host.ts';

const GRACE_ms = 1000;

describe('hosts of the windows', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  const make = () => {
    const onGone = vi.fn();
    const ended: number[] = [];
    let made = 0;
    const windows = makeWindowHosts(
      () => {
        made += 1;
        const number = made;
        return { end: async () => void ended.push(number) } as unknown as LocalHost;
      },
      GRACE_ms,
      onGone,
    );
    return { windows, onGone, ended };
  };

  test('a window keeps its host as long as its stream', () => {
    const { windows, ended } = make();
    const host = windows.hostOf('w1');
    windows.came('w1');
    expect(windows.hostOf('w1')).toBe(host);
    windows.went('w1');
    expect(ended).toEqual([1]);
    expect(windows.hostOf('w1')).not.toBe(host);
  });

  test('a window that comes back within the grace keeps the program running', () => {
    const { windows, onGone } = make();
    windows.came('w1');
    windows.went('w1');
    vi.advanceTimersByTime(GRACE_ms - 1);
    windows.came('w2');
    vi.advanceTimersByTime(GRACE_ms * 10);
    expect(onGone).not.toHaveBeenCalled();
    windows.went('w2');
    vi.advanceTimersByTime(GRACE_ms);
    expect(onGone).toHaveBeenCalledOnce();
  });

  test('a stream that is opened anew before the old one is closed keeps its host', () => {
    const { windows, ended, onGone } = make();
    windows.hostOf('w1');
    windows.came('w1');
    windows.came('w1');
    windows.went('w1');
    vi.advanceTimersByTime(GRACE_ms * 2);
    expect([ended, onGone.mock.calls.length]).toEqual([[], 0]);
  });

  test('without a window the program waits for its first', () => {
    const { onGone } = make();
    vi.advanceTimersByTime(GRACE_ms * 1000);
    expect(onGone).not.toHaveBeenCalled();
  });

  test('ending all ends every host and stops waiting', async () => {
    const { windows, ended, onGone } = make();
    windows.hostOf('w1');
    windows.hostOf('w2');
    windows.came('w3');
    windows.went('w3');
    await windows.endAll();
    vi.advanceTimersByTime(GRACE_ms * 2);
    expect(ended.sort()).toEqual([1, 2]);
    expect(onGone).not.toHaveBeenCalled();
  });
});
