import { describe, expect, test } from 'vitest';
import { UnderlayProblem } from '#shared/underlay/drawing';
import { makeJobs } from '../../../src-main/services/jobs.ts';

const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('jobs', () => {
  test('tell how far they are, and give their result when done', async () => {
    const jobs = makeJobs();
    let finish = (_value: string): void => undefined;
    const job = jobs.start('reading', 'Reading', (report) => {
      report(0.5, 'Half way');
      report(0.2, 'Never back');
      return new Promise<string>((resolve) => {
        finish = resolve;
      });
    });
    expect(jobs.state(job)).toEqual({ state: 'running', progress: 0.5, doing: 'Never back', problem: null });
    expect(() => jobs.result(job, 'reading')).toThrow('not finished');
    finish('drawing');
    await settle();
    expect(jobs.state(job)).toMatchObject({ state: 'done', progress: 1 });
    expect(jobs.result(job, 'reading')).toBe('drawing');
    expect(() => jobs.result(job, 'printing')).toThrow('no printing');
  });

  test('a failure is a problem with what, where and remedy', async () => {
    const jobs = makeJobs();
    const job = jobs.start('reading', 'Reading a.dxf', async () => {
      throw new UnderlayProblem('The file is cut short.', 'line 7', 'Ask for it again.');
    });
    await settle();
    expect(jobs.state(job)).toMatchObject({ state: 'failed', problem: { code: 'unreadable', what: 'The file is cut short.', where: 'Reading a.dxf: line 7', remedy: 'Ask for it again.' } });
    expect(() => jobs.result(job, 'reading')).toThrow('cut short');
  });

  test('a cancelled one stops, and stays cancelled even when it ends well', async () => {
    const jobs = makeJobs();
    let isStopped = false;
    const job = jobs.start('printing', 'Printing', async (_report, signal) => {
      signal.addEventListener('abort', () => {
        isStopped = true;
      });
      await settle();
      return 'too late';
    });
    jobs.cancel(job);
    expect(isStopped).toBe(true);
    await settle();
    await settle();
    expect(jobs.state(job)).toMatchObject({ state: 'cancelled', problem: { code: 'cancelled' } });
    expect(() => jobs.result(job, 'printing')).toThrow('cancelled');
  });

  test('an unknown one is not found', () => {
    expect(() => makeJobs().state('x')).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code: 'not-found' }) }));
  });

  test('old results are forgotten, running work is not', async () => {
    const jobs = makeJobs();
    const running = jobs.start('reading', 'Long', () => new Promise(() => undefined));
    const ids: string[] = [];
    for (let i = 0; i < 30; i += 1) {
      ids.push(jobs.start('reading', 'Short', async () => i));
      await settle();
    }
    expect(() => jobs.result(ids[0] ?? '', 'reading')).toThrow();
    expect(jobs.result(ids[29] ?? '', 'reading')).toBe(29);
    expect(jobs.state(running).state).toBe('running');
    jobs.cancelAll();
    expect(jobs.state(running).state).toBe('cancelled');
  });
});
