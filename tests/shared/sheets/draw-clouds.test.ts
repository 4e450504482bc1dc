import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import type { Command } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { cloudMarks, joinedBoxes } from '#shared/sheets/draw-clouds';
import { PAPERS } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { planCuts } from '#shared/sheets/section-cuts';
import { composeSection, sectionSize } from '#shared/sheets/section-view';
import type { Mark } from '#shared/sheets/sheet';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

const SIZES = typeSizesOf(PAPERS.A3);
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

  test('sections, isometrics and cylinder walls cloud what of the changes they show, and nothing else', async () => {
    const { plan } = await buildDemo('F1');
    const [network] = Object.values(plan.networks);
    const [nozzle] = Object.values(network?.nozzles ?? {});
    const [cylinder] = Object.values(network?.cylinders ?? {});
    if (!network || !nozzle || !cylinder) throw new Error('The demo has a nozzle and a cylinder.');
    const clouded = (after: Plan, isView: (key: string) => boolean): number =>
      composeSheets(evaluate(after), new Map(), SHEETS)
        .filter(({ views }) => views.some(({ key }) => isView(key)))
        .flatMap(({ marks }) => marks)
        .filter((each) => each.kind === 'text' && each.text === 'X8' && each.align === 'middle').length;
    const [isIsometric, isElevation] = ['isometric/', 'elevation/'].map((start) => (key: string) => key.startsWith(start));
    if (!isIsometric || !isElevation) throw new Error('No views.');
    const issued = changedBy(plan, issue('X7'));
    const turned = changedBy(issued, editNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { rotation_rad: 0.1 }), issue('X8'));
    expect(clouded(turned, isIsometric)).toBe(1);
    expect(clouded(turned, isElevation)).toBe(0);
    const raised = changedBy(issued, editCylinder({ kind: 'cylinder', network: network.id, id: cylinder.id }, { railHeight_m: 1.3 }), issue('X8'));
    expect(clouded(raised, isIsometric)).toBe(0);
    expect(clouded(raised, isElevation)).toBeGreaterThan(0);
    const next = changedBy(raised, issue('X9'));
    expect(clouded(next, isElevation)).toBe(0);

    // The section alone, drawn on paper of its own.
    const textsOf = (each: Plan): number => {
      const drawn = derivePlan(each);
      const [first] = planCuts(drawn);
      if (!first) throw new Error('No section.');
      const { width_mm, height_mm } = sectionSize(first, 32, SIZES);
      return composeSection(drawn, first, 32, SIZES, 'feet', { left: 0, top: 0, right: width_mm, bottom: height_mm }).marks.filter((mark) => mark.kind === 'text' && mark.text === each.lastIssue?.mark).length;
    };
    expect([issued, turned, raised, next].map(textsOf)).toEqual([0, 1, 1, 0]);
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
