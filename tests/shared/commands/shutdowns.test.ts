import { describe, expect, test } from 'vitest';
import { addShutdowns } from '#shared/commands/add-shutdowns';
import { applyCure } from '#shared/commands/apply-cure';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import type { Plan } from '#shared/model/plan';
import { e13DuctsShut } from '#shared/rules/enclosure/e13-ducts-shut';
import { check } from '../../support/layout.ts';
import { builtRoom } from '../../support/served-room.ts';
import { doneAll } from '../../support/try-command.ts';

const row = { name: 'AHU-1', kind: 'fan', target: null, on: 'release' } as const;
const rowsOf = (plan: Plan) => Object.values(Object.values(plan.levels['level-0']?.enclosures ?? {})[0]?.shutdowns ?? {});

describe('rows of the release matrix', () => {
  test('are added with ids of their own, and undone', () => {
    const built = builtRoom();
    const next = doneAll(built.plan, addShutdowns(built.enclosure, [row, row]));
    const rows = rowsOf(next);
    expect(rows).toMatchObject([row, row]);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(2);
  });
  test('are taken out as a whole record', () => {
    const built = builtRoom();
    const next = doneAll(built.plan, addShutdowns(built.enclosure, [row]));
    expect(rowsOf(doneAll(next, editEnclosure(built.enclosure, { shutdowns: {} })))).toEqual([]);
  });
  test('are refused for a room that has gone, and with a name that is too long', () => {
    const built = builtRoom();
    expect(addShutdowns({ ...built.enclosure, id: 'gone' }, [row])(built.plan).ok).toBe(false);
    expect(addShutdowns(built.enclosure, [{ ...row, name: 'x'.repeat(201) }])(built.plan).ok).toBe(false);
  });
  test('clear what the check of ducts asks for', () => {
    const built = builtRoom().opening(1, 2, 0.5, { name: 'D1', kind: 'damper', closes: true, swing: 'none' }).device('diffuser', 1, 1, { name: 'S1' });
    let { plan } = built;
    for (const { cure } of check(e13DuctsShut, plan)) if (cure) plan = doneAll(plan, applyCure(cure));
    expect(check(e13DuctsShut, plan).map(({ verdict }) => verdict)).toEqual(['ok', 'ok']);
  });
});
