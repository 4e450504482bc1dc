import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { detailsOf } from '#shared/sheets/details/detail-sheets';
import { textBoxOf } from '#shared/sheets/text-box';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../../support/plan-builder.ts';
import { sheetsOf, textsOf, wordsOf } from '../../../support/sheet-set.ts';
import { textOverlaps } from '../../../support/text-overlaps.ts';

const titlesOf = (plan: Plan): string[] => detailsOf(derivePlan(plan)).map(({ title }) => title);
const notesOf = (plan: Plan, title: string): string => detailsOf(derivePlan(plan)).filter((detail) => detail.title === title).flatMap(({ notes }) => notes).join('\n');

const built = (change: Parameters<ReturnType<typeof planBuilder>['network']>[0] = {}) =>
  planBuilder()
    .room(6, 4, 2.6)
    .network(change)
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.3)])
    .nozzle(4, 2, 2.3);

describe('which details a plan needs', () => {
  test('one without pipe through walls, vents, doors and traps has none of those', () => {
    expect(titlesOf(built().plan)).toEqual(['Cylinder, rail and anchors', 'Pipe supports', 'Nozzle drop', 'Sign inside each room', 'Sign at the cylinders']);
  });

  test('an empty plan needs none', () => {
    expect(titlesOf(planBuilder().plan)).toEqual([]);
  });

  test('a dirt trap, a vent, a door and a penetration bring theirs', () => {
    const more = built().run([place3(4, 2, 2.5), place3(4.1, 2, 2.5)]).opening(0, 2, 0.9).opening(1, 2, 0.4, { kind: 'relief-vent', name: 'V1', leadsTo: 'outdoors', freeArea_m2: 0.02 });
    const end = more.nodeAt(4.1, 2, 2.5);
    const node = more.plan.networks[end.network]?.nodes[end.id];
    if (!node) throw new Error('The trap has an end.');
    node.part = 'dirt-trap';
    expect(titlesOf(more.plan)).toEqual(expect.arrayContaining(['Dirt trap', 'Relief vent', 'Sign outside each door']));
    // 4.1 − 4.0 m; the least nipple of NFPA 2001:2018 is 50 mm, printed from 2 in.
    expect(notesOf(more.plan, 'Dirt trap')).toContain('100 mm from the centre of the tee');
    expect(notesOf(more.plan, 'Relief vent')).toContain('400 mm wide');
  });

  test('pipe that goes through a wall is detailed, with what is not known said', () => {
    const through = planBuilder().room(6, 4, 2.6).room(6, 4, 2.6, { x: 6.15, y: 0 }).network().cylinder(0.2, 2, Math.PI).run([place3(0.2, 2, 2), place3(0.2, 2, 2.4), place3(9, 2, 2.4), place3(9, 2, 2.2)]).nozzle(9, 2, 2.2);
    expect(titlesOf(through.plan)).toContain('Pipe through a wall');
    expect(notesOf(through.plan, 'Pipe through a wall')).toContain('not entered yet');
  });
});

describe('what the details say', () => {
  test('the assembly in flow order with its set pressure, a reversed part and a missing regulator', () => {
    const assembly = [
      { id: 'a', kind: 'hose' as const, name: 'Hose', length_m: 0.5, setPressure_Pa: null, arrowDownstream: true },
      { id: 'b', kind: 'check-valve' as const, name: 'Valve', length_m: 0.1, setPressure_Pa: null, arrowDownstream: false },
    ];
    const without = notesOf(built({ assembly }).plan, 'Discharge assembly');
    expect(without).toMatch(/^1 Hose, 500 mm long\.\n2 Valve \(ARROW AGAINST THE FLOW\)/);
    expect(without).toContain('all pipe, stands under the pressure of the cylinder');
    const regulator = { id: 'c', kind: 'regulator' as const, name: 'Regulator', length_m: 0.15, setPressure_Pa: 6_101_325, arrowDownstream: true };
    // 6 101 325 Pa absolute are 61.0 bar absolute.
    const withIt = notesOf(built({ assembly: [...assembly, regulator] }).plan, 'Discharge assembly');
    expect(withIt).toContain('3 Regulator set to 61.0');
    expect(withIt).toContain('Single line: behind the regulator');
  });

  test('distances of supports are those of the basis of design: 100 mm to DN 25 and 12 in', () => {
    const { plan } = built();
    const drawn = (): string => sheetsOf(plan, { paper: 'A3' }).filter(({ title }) => title.startsWith('Details')).flatMap(wordsOf).join('\n');
    plan.basis.lastSupport = 'iso';
    expect(drawn()).toContain('at most 100 mm');
    plan.basis.lastSupport = 'us';
    expect(drawn()).toContain('at most 305 mm');
  });

  test('a nozzle drop gives its pipe, the distance to the ceiling and its last support', () => {
    const notes = notesOf(built().support(4, 2, 2.35).plan, 'Nozzle drop');
    expect(notes).toContain('200 mm from the centre of the fitting to the orifice');
    expect(notes).toContain('Last support 50 mm from the orifice');
    expect(notesOf(built().plan, 'Nozzle drop')).toContain('No support is drawn on this pipe');
  });

  test('each names a source and a caution', async () => {
    for (const detail of detailsOf(derivePlan((await buildDemo('F2')).plan))) {
      expect([detail.title, detail.source]).not.toEqual([detail.title, '']);
      expect([detail.title, detail.caution]).not.toEqual([detail.title, '']);
    }
  });
});

describe.each(['F1', 'F2', 'F3'] as const)('details sheets of %s', (name) => {
  test('on every paper no text lies over another or outside the frame, and none is missing', async () => {
    const { plan } = await buildDemo(name);
    for (const paper of ['A4', 'A3', 'ANSI-B'] as const) {
      const sheets = sheetsOf(plan, { paper }).filter(({ title }) => title.startsWith('Details'));
      expect(sheets.length).toBeGreaterThan(0);
      for (const sheet of sheets) {
        expect(textOverlaps(textsOf(sheet))).toEqual([]);
        expect(wordsOf(sheet).join(' ')).not.toContain('had no room');
        for (const mark of textsOf(sheet)) {
          const { y, halfHeight } = textBoxOf(mark);
          expect(y + halfHeight, mark.text).toBeLessThanOrEqual(sheet.paper.height_mm - 9);
        }
      }
    }
  });

  test('the field set has none', async () => {
    const sheets = sheetsOf((await buildDemo(name)).plan, { paper: 'A3', set: 'field' });
    expect(sheets.some(({ title }) => title.startsWith('Details'))).toBe(false);
  });
});
