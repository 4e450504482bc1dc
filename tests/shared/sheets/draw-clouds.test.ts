import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import type { Command } from '#shared/commands/command';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { cloudMarks, joinedBoxes } from '#shared/sheets/draw-clouds';
import type { Mark } from '#shared/sheets/sheet';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

const SHEETS = { paper: 'ANSI-B', scale: 'auto', set: 'submittal', printedAt: 'today', takeOff: null } as const;
const changedBy = (plan: Plan, ...commands: Command[]): Plan =>
  commands.reduce((before, command) => {
    const outcome = command(before);
    if (!outcome.ok) throw new Error(outcome.reason);
    return outcome.next;
  }, plan);
const issue = (mark: string) => addRevision({ mark, date: '2026-11-30', text: 'Issued' });
const triangles = (plan: Plan, mark: string): number =>
  composeSheets(evaluate(plan), new Map(), SHEETS)
    .filter(({ title }) => title.startsWith('Nozzle and pipe plan'))
    .flatMap(({ marks }) => marks)
    .filter((each) => each.kind === 'text' && each.text === mark && each.align === 'middle').length;

describe('clouds', () => {
  test('what changed with the last revision is clouded, with its mark only; a first issue clouds nothing', async () => {
    const { plan } = await buildDemo('F1');
    const [network] = Object.values(plan.networks);
    const [nozzle] = Object.values(network?.nozzles ?? {});
    if (!network || !nozzle) throw new Error('The demo has a nozzle.');
    const issued = changedBy(plan, issue('X7'));
    expect(triangles(issued, 'X7')).toBe(0);
    const turned = changedBy(issued, editNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { rotation_rad: 0.1 }), issue('X8'));
    expect(triangles(turned, 'X8')).toBe(1);
    expect(triangles(turned, 'X7')).toBe(0);
    expect(triangles(changedBy(turned, issue('X9')), 'X9')).toBe(0);
  });

  test('boxes are put together until none touches another, and hold all that they held', () => {
    const box = fc.record({ left: fc.integer({ min: 0, max: 60 }), top: fc.integer({ min: 0, max: 60 }), width: fc.integer({ min: 1, max: 15 }), height: fc.integer({ min: 1, max: 15 }) }).map(({ left, top, width, height }) => ({ left, top, right: left + width, bottom: top + height }));
    fc.assert(
      fc.property(fc.array(box, { maxLength: 12 }), (boxes) => {
        const apart = joinedBoxes(boxes);
        for (const each of boxes) expect(apart.some(({ left, right, top, bottom }) => left <= each.left && right >= each.right && top <= each.top && bottom >= each.bottom)).toBe(true);
        for (const [i, a] of apart.entries()) for (const b of apart.slice(i + 1)) expect(a.left > b.right || b.left > a.right || a.top > b.bottom || b.top > a.bottom).toBe(true);
      }),
    );
  });

  test('a cloud bulges outward: no place of it lies within its box', () => {
    const [mark] = cloudMarks({ left: 10, top: 20, right: 40, bottom: 36 }, 1) as [Extract<Mark, { kind: 'line' }>];
    const places = mark.places;
    for (let i = 0; i < places.length; i += 2) {
      const [x, y] = [places[i] ?? 0, places[i + 1] ?? 0];
      expect(x <= 10 + 1e-9 || x >= 40 - 1e-9 || y <= 20 + 1e-9 || y >= 36 - 1e-9).toBe(true);
    }
  });
});
