import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Answer } from '#shared/host/contract';
import type { LocalHost } from '../../src-main/services/local-host.ts';
import { type HostOptions, makeHost } from '../../src-main/services/make-host.ts';

/** Any time, the same in every test. */
export const TEST_TIME = new Date('2026-03-04T15:20:00Z');

/** A host over a folder, ended with its test. */
export function hostIn(folder: string, options: Partial<HostOptions> = {}): LocalHost {
  const host = makeHost({
    kind: 'loopback',
    version: '0.0.0',
    userDataFolder: join(folder, 'own'),
    plansFolder: join(folder, 'plans'),
    now: () => TEST_TIME,
    ...options,
  });
  onTestFinished(() => host.end());
  return host;
}

/** The value of an answer that must be good. */
export function goodOf<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value;
  throw new Error(`${answer.problem.code}: ${answer.problem.what} (${answer.problem.where}) ${answer.problem.remedy}`);
}

/** The problem of an answer that must be bad. */
export function problemIn(answer: Answer<unknown>) {
  if (!answer.ok) return answer.problem;
  throw new Error('The answer is good.');
}
