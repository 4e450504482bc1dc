import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Adjoining } from '#shared/model/plan';
import { s09AdjacentSpaces as rule } from '#shared/rules/safety/s09-adjacent-spaces';
import { check, checkOne } from '../../../support/layout.ts';
import { planBuilder } from '../../../support/plan-builder.ts';
import { builtRoom, eastOf } from '../../../support/served-room.ts';

const beside = (gas: Adjoining['gas'], kind: Adjoining['kind'] = 'corridor') => builtRoom().adjoining(kind, eastOf(), { name: 'Link', gas });
const pit = rectangle(1, 1, planPoint(1, 1));

describe('S9', () => {
  test.each([
    ['not-assessed', 'not-checked'],
    ['does-not-reach', 'ok'],
    ['alarmed', 'ok'],
    ['ventilated', 'ok'],
  ] as const)('a corridor beside it that is %s', (gas, verdict) => {
    expect(checkOne(rule, beside(gas).plan)).toMatchObject({ verdict, name: 'Link, beside Room 1', subject: { kind: 'adjoining' } });
  });
  test('nothing drawn and nothing said is not checked', () => expect(checkOne(rule, builtRoom().plan)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('nobody has said what lies beside') }));
  test('nothing drawn, but told in words', () => expect(checkOne(rule, builtRoom({ adjacent: 'Outdoors on all sides.' }).plan)).toMatchObject({ verdict: 'ok', inputs: [{ value: 'Outdoors on all sides.' }] }));
  test('a space that does not touch it says nothing of what does', () => {
    expect(checkOne(rule, builtRoom().adjoining('corridor', rectangle(2, 4, planPoint(9, 0)), { gas: 'alarmed' }).plan).verdict).toBe('not-checked');
  });
  test('outdoors needs no word', () => expect(check(rule, beside('not-assessed', 'outdoors').plan)).toEqual([]));
  test('a pit under it is told that nitrogen does not gather there by its weight', () => {
    const { plan } = builtRoom().adjoining('pit', pit, { name: 'Sump', floor_m: -1.2 });
    expect(checkOne(rule, plan)).toMatchObject({ verdict: 'not-checked', name: 'Sump, under Room 1', text: expect.stringContaining('a little lighter than air') });
  });
  test('said to be out of reach though an opening that stays open leads there', () => {
    const open = (closes: boolean) => beside('does-not-reach').opening(1, 2, 1, { kind: 'grille', name: 'Grille', closes }).plan;
    expect(checkOne(rule, open(false))).toMatchObject({ verdict: 'warn', text: expect.stringContaining('“Grille” of Room 1 leads to it') });
    expect(checkOne(rule, open(true)).verdict).toBe('ok');
  });

  const two = (change: { first?: object; second?: object }) => builtRoom(change.first).room(6, 4, 2.7, planPoint(6.15, 0), change.second).plan;
  test.each([
    ['nothing is said', {}, 'not-checked'],
    ['words are there', { first: { adjacent: 'Room 2 sounds with Room 1.' } }, 'ok'],
  ])('another protected room where %s', (_, change, verdict) => expect(checkOne(rule, two(change))).toMatchObject({ verdict, name: 'Room 1', text: expect.stringContaining('Room 2') }));
  test('several rooms are one question, beside a corridor that is another', () => {
    const { plan } = builtRoom().adjoining('corridor', eastOf(), { gas: 'alarmed' }).room(6, 4, 2.7, planPoint(0, 4.15)).room(6, 4, 2.7, planPoint(-6.15, 0));
    expect(check(rule, plan)).toMatchObject([{ name: 'corridor, beside Room 1', verdict: 'ok' }, { name: 'Room 1', text: 'Not checked: nobody has said what gas does that drifts to Room 2 and Room 3; they are not discharged together with this room.' }]);
  });
  test('a room that is discharged together needs no word', () => {
    expect(check(rule, two({ first: { dischargedWith: 'A' }, second: { dischargedWith: 'A' } }))).toEqual([]);
  });
  test('a room of the level below touches through its floor', () => {
    const built = planBuilder().room(6, 4, 2.7).level('Level 2', 3).room(6, 4, 2.7).network().nozzle(3, 2, 2.5);
    expect(checkOne(rule, built.plan)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('drifts to Room 1') });
  });
  test('a room that no nozzle serves is not asked', () => expect(check(rule, planBuilder().room(6, 4, 2.7).plan)).toEqual([]));
});
