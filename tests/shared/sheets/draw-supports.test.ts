import { expect, test } from 'vitest';
import { suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { replaceSupports } from '#shared/commands/replace-supports';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan, Support } from '#shared/model/plan';
import { supportSchedule } from '#shared/sheets/support-schedule';
import { sheetsOf, wordsOf } from '../../support/sheet-set.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

/** A demo without any support. */
async function bare(): Promise<Plan> {
  const { plan } = await buildDemo('F2');
  for (const network of Object.values(plan.networks)) network.supports = {};
  return plan;
}

/** The same with supports by the table, their kinds in turn. */
async function supported(kinds: readonly Support['kind'][]): Promise<Plan> {
  const plan = await bare();
  return derivePlan(plan).networks.reduce((before, network) => {
    const supports = suggestedSupports(network, plan.basis, []).map((support, i) => ({ ...support, kind: kinds[i % kinds.length] ?? support.kind }));
    const outcome = replaceSupports(network.ref, supports)(before);
    return outcome.ok ? outcome.next : before;
  }, plan);
}

const legend = (plan: Plan): string[] => sheetsOf(plan).flatMap(wordsOf);

test('each kind of support in use stands in the legend, and no other', async () => {
  const rigid = legend(await supported(['rigid']));
  expect(rigid).toContain('rigid support');
  expect(rigid.filter((words) => words.startsWith('guide:'))).toEqual([]);
  const all = legend(await supported(['rigid', 'guide', 'hanger', 'sling']));
  for (const words of ['rigid support', 'guide: pipe slides along it', 'hanger: only carries', 'sling: only carries, loose']) expect(all).toContain(words);
});

test('plan and section both draw them', async () => {
  const marks = (plan: Plan): number[] => sheetsOf(plan).map((sheet) => sheet.marks.length);
  const [without, held] = [marks(await bare()), marks(await supported(['rigid']))];
  expect(held.filter((count, i) => count > (without[i] ?? 0)).length).toBeGreaterThanOrEqual(2);
});

test('a plan without supports names none', async () => {
  expect(legend(await bare()).filter((words) => /rigid support|^(guide|hanger|sling):/.test(words))).toEqual([]);
});

test('the schedule says of each support which pipe it holds and how far along', async () => {
  const { rows } = supportSchedule(derivePlan((await buildDemo('F1')).plan));
  expect(rows).toEqual([
    ['Rigid', '3/4"', `+7'-8"`, expect.stringMatching(/^4 1\/2" from the 90° elbow, to N1$/), '179.8 lbf'],
    ['Rigid', '3/4"', `+7'-8"`, expect.stringMatching(/^11 13\/16" from the 90° elbow, to N1$/), '179.8 lbf'],
    ['Rigid', '3/4"', expect.stringMatching(/^\+7'-6/), expect.stringMatching(/^2 1\/16" from nozzle N1$/), '179.8 lbf'],
  ]);
});

test('both sets print the schedule where supports are drawn, and not where none is', async () => {
  const held = await supported(['rigid']);
  for (const set of ['submittal', 'field'] as const) {
    expect(sheetsOf(held, { set }).flatMap(wordsOf)).toContain('Pipe supports');
    expect(sheetsOf(await bare(), { set }).flatMap(wordsOf)).not.toContain('Pipe supports');
  }
});
