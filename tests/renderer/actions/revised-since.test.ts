import { expect, test } from 'vitest';
import { type Issuing, issueSet } from '#shared/commands/issue-set';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { type Host, answered, failed } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import { revisedSince } from '../../../src-renderer/actions/revised-since.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { refsOf } from '../../support/random-commands.ts';
import { done } from '../../support/try-command.ts';

const first: Issuing = { mark: 'A', date: '2026-11-30', by: 'R. Vale', purpose: 'For approval' };
const digest = (mark: string): string => (mark === 'A' ? 'a' : 'b').repeat(64);
const kept = (mark: string) => ({ sha256: digest(mark), plan: { name: mark, file: `${mark}.nzw`, sha256: digest(mark) }, sheets: { name: mark, file: `${mark}.pdf`, sha256: digest(mark).replaceAll(/./g, mark === 'A' ? 'c' : 'd') } });

const drawn = (): Plan => planBuilder().room(4, 3, 2.6).network().nozzle(2, 1, 2.2).plan;
function moved(plan: Plan): Plan {
  const nozzle = refsOf(plan).find((ref) => ref.kind === 'nozzle');
  if (nozzle?.kind !== 'nozzle') throw new Error('No nozzle.');
  return done(plan, moveNozzle(nozzle, { x: 2.5, y: 1, z: 2.2 })).next;
}
const reading = (plans: Readonly<Record<string, Plan>>): Pick<Host, 'readIssue'> => ({
  readIssue: async ({ sha256 }) => {
    const plan = plans[sha256];
    return plan ? answered({ plan, remarks: [] }) : failed('not-found', 'The plan of this set is gone.', 'set A', 'Look for a copy.');
  },
});

test('nothing is listed before a first issue, nor for the first itself', async () => {
  const host = reading({});
  expect(await revisedSince(drawn(), host)).toBeUndefined();
  expect(await revisedSince(done(drawn(), issueSet(first, kept('A'))).next, host)).toBeUndefined();
});

test('the newest issue is compared with the one before it, whatever is drawn since', async () => {
  const was = drawn();
  const a = done(was, issueSet(first, kept('A'))).next;
  const is = moved(a);
  const b = done(is, issueSet({ ...first, mark: 'B' }, kept('B'))).next;
  const since = await revisedSince(b, reading({ [digest('A')]: was, [digest('B')]: is }));
  expect(since).toMatchObject({ since: 'A', mark: 'B' });
  expect(since?.unread).toBeUndefined();
  expect(since?.list.some(({ kind, name }) => kind === 'moved' && name.startsWith('Nozzle'))).toBe(true);
});

test('an issue that cannot be read says why in place of the list', async () => {
  const a = done(drawn(), issueSet(first, kept('A'))).next;
  const b = done(a, issueSet({ ...first, mark: 'B' }, kept('B'))).next;
  const since = await revisedSince(b, reading({ [digest('B')]: a }));
  expect(since).toMatchObject({ since: 'A', mark: 'B', list: [] });
  expect(since?.unread).toBe('The plan of this set is gone. What was changed since then is not listed: compare with the copy that was given out.');
  const lost = done(done(drawn(), issueSet(first, { sha256: digest('A'), plan: null, sheets: null })).next, issueSet({ ...first, mark: 'B' }, kept('B'))).next;
  expect((await revisedSince(lost, reading({ [digest('B')]: a })))?.unread).toContain('was not kept with this plan');
});
