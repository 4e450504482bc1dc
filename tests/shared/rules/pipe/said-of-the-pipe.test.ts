import { describe, expect, test } from 'vitest';
import type { Network } from '#shared/model/plan';
import { p26Bonding } from '#shared/rules/pipe/p26-bonding';
import { p34MarkingAndFinish } from '#shared/rules/pipe/p34-marking-and-finish';
import { at3, check, checkOne, layout } from '../../../support/layout.ts';

const piped = (installation: Network['installation']) => layout({ runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5)] }], network: { installation } });
const bonded = (bonding: Network['installation']['bonding']) => checkOne(p26Bonding, piped({ bonding, marking: '', finish: '' }));
const said = (marking: string, finish: string) => checkOne(p34MarkingAndFinish, piped({ bonding: 'unknown', marking, finish }));

describe('P26', () => {
  test.each([['bonded', 'ok'], ['not-bonded', 'warn'], ['unknown', 'not-checked']] as const)('%s', (bonding, verdict) => {
    expect(bonded(bonding).verdict).toBe(verdict);
  });
});

describe('P34', () => {
  test.each([
    ['Nitrogen, with arrows', 'Primed and painted', 'ok'],
    ['Nitrogen, with arrows', '', 'note'],
    ['', 'Primed and painted', 'note'],
    [' ', '', 'note'],
  ])('marking “%s”, finish “%s”', (marking, finish, verdict) => {
    expect(said(marking, finish).verdict).toBe(verdict);
  });

  test('says what is open', () => {
    expect(said('', '').text).toBe('The plan does not say yet how the pipe is marked and what protects it against corrosion. Enter it with the network.');
  });
});

test('a network without pipe is asked about neither', () => {
  expect([p26Bonding, p34MarkingAndFinish].flatMap((rule) => check(rule, layout({})))).toEqual([]);
});
