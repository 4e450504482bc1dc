import { describe, expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { deleteThings } from '#shared/commands/delete-things';
import type { Command } from '#shared/commands/command';
import type { Plan } from '#shared/model/plan';
import { changedKeys, thingDigests } from '#shared/model/thing-digests';
import { d07ChangesClouded as rule } from '#shared/rules/document/d07-changes-clouded';
import { at3, check, layout } from '../../../support/layout.ts';

const drawn = () => layout({ nozzles: [{ at: at3(2, 2, 2.2) }], runs: [{ places: [at3(0.2, 2, 1.8), at3(0.2, 2, 2.5), at3(2, 2, 2.5), at3(2, 2, 2.2)] }] });
const changedBy = (plan: Plan, ...commands: Command[]): Plan =>
  commands.reduce((before, command) => {
    const outcome = command(before);
    if (!outcome.ok) throw new Error(outcome.reason);
    return outcome.next;
  }, plan);
const issue = (mark: string) => addRevision({ mark, date: '2026-11-30', text: 'Issued' });
const open = (plan: Plan) => check(rule, plan).filter(({ verdict }) => verdict !== 'ok');
const nozzle = { kind: 'nozzle', network: 'net', id: 'n1' } as const;

describe('D7', () => {
  test('never issued: nothing to cloud', () => expect(check(rule, drawn()).map(({ verdict }) => verdict)).toEqual(['ok']));

  test('issued and unchanged; changed; changed back; issued again', () => {
    const issued = changedBy(drawn(), issue('A'));
    expect(open(issued)).toEqual([]);
    const turned = changedBy(issued, editNozzle(nozzle, { rotation_rad: 0.5 }));
    expect(open(turned)).toMatchObject([{ verdict: 'warn', name: 'Network', measured: 1 }]);
    expect(open(changedBy(turned, editNozzle(nozzle, { rotation_rad: 0 })))).toEqual([]);
    const again = changedBy(turned, issue('B'));
    expect(open(again)).toEqual([]);
    expect(again.lastIssue).toMatchObject({ mark: 'B', changed: ['nozzle///net/n1'] });
  });

  test('a moved nozzle, and a network that has gone', () => {
    const issued = changedBy(drawn(), issue('A'));
    expect(open(changedBy(issued, moveNozzle(nozzle, at3(2.2, 2, 2.2))))[0]?.text).toContain('since revision A');
    expect(open(changedBy(issued, deleteThings([{ kind: 'network', id: 'net' }])))[0]?.text).toContain('level or network has gone');
  });

  test('a room counts with its level', () => {
    const issued = changedBy(drawn(), issue('A'));
    expect(open(changedBy(issued, deleteThings([{ kind: 'enclosure', level: 'level-0', id: 'e1' }])))).toMatchObject([{ name: 'Level 1', measured: 1 }]);
  });

  test('digests do not hang on the order of fields, and differ for every kind of thing that changes', () => {
    const plan = drawn();
    const level = plan.levels['level-0'];
    const room = level?.enclosures.e1;
    if (!level || !room) throw new Error('The layout has a room.');
    const turnedRound = { ...plan, levels: { 'level-0': { ...level, enclosures: { e1: Object.fromEntries(Object.entries(room).reverse()) as typeof room } } } };
    expect(changedKeys(thingDigests(plan), thingDigests(turnedRound))).toEqual([]);
    const higher = { ...plan, levels: { 'level-0': { ...level, enclosures: { e1: { ...room, height_m: 2.8 } } } } };
    expect(changedKeys(thingDigests(plan), thingDigests(higher))).toEqual(['enclosure/level-0///e1']);
  });
});
