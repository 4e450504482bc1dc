import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyCure } from '#shared/commands/apply-cure';
import { evaluate } from '#shared/evaluate';
import type { Obstruction, Plan } from '#shared/model/plan';
import { VERDICTS, type Finding, findingKey } from '#shared/rules/finding';
import { at3, layout } from '../../support/layout.ts';

const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const box = (x: number, y: number, w: number, d: number) => [{ x, y }, { x: x + w, y }, { x: x + w, y: y + d }, { x, y: y + d }] as never;

interface Case {
  readonly width_m: number;
  readonly depth_m: number;
  readonly height_m: number;
  readonly nozzles: readonly { readonly x: number; readonly y: number; readonly drop_m: number; readonly rotation_rad: number; readonly tilt_rad: number }[];
  readonly things: readonly { readonly kind: Obstruction['kind']; readonly x: number; readonly y: number; readonly w: number; readonly d: number; readonly bottom: number; readonly top: number }[];
}

/** A room with one to three nozzles on a main and up to two things in it, everything anywhere. */
const anyCase: fc.Arbitrary<Case> = fc.record({
  width_m: within(4, 9),
  depth_m: within(3, 6),
  height_m: within(2.4, 3.4),
  nozzles: fc.array(fc.record({ x: within(0.02, 0.98), y: within(0.02, 0.98), drop_m: within(0.03, 0.8), rotation_rad: within(0, 6.28), tilt_rad: fc.constantFrom(0, 0, 0, 0.12) }), { minLength: 1, maxLength: 3 }),
  things: fc.array(fc.record({ kind: fc.constantFrom('beam' as const, 'rack' as const, 'light' as const, 'duct' as const), x: within(0.1, 0.8), y: within(0.1, 0.8), w: within(0.2, 1.5), d: within(0.2, 1.5), bottom: within(0, 0.9), top: within(0.3, 1) }), { maxLength: 2 }),
});

function planOf({ width_m, depth_m, height_m, nozzles, things }: Case): Plan {
  const top = height_m - 0.1;
  const middle = depth_m / 2;
  // Each nozzle has its own part of the main, so that no pipe is drawn over another.
  const hung = nozzles.map(({ x, y, ...nozzle }, i) => ({ ...nozzle, x: ((i + 0.05 + 0.9 * x) * width_m) / nozzles.length, y: y * depth_m }));
  const branches = hung.map(({ x, y, drop_m }) => ({ places: [at3(x, middle, top), at3(x, y, top), at3(x, y, top - drop_m)] }));
  return layout({
    room: box(0, 0, width_m, depth_m),
    height_m,
    runs: [{ places: [at3(0.06, middle, top - 0.5), at3(0.06, middle, top), ...hung.map(({ x }) => at3(x, middle, top))] }, ...branches],
    nozzles: hung.map(({ x, y, drop_m, rotation_rad, tilt_rad }) => ({ at: at3(x, y, top - drop_m), rotation_rad, tilt_rad })),
    obstructions: things.map(({ kind, x, y, w, d, bottom, top: high }) => ({ kind, footprint: box(x * width_m, y * depth_m, w, d), bottom_m: Math.min(bottom, high - 0.1) * height_m, top_m: high * height_m })),
  });
}

const curable = ({ verdict, cure }: Finding): boolean => verdict !== 'ok' && cure !== undefined && cure.kind !== 'advice';
const graver = (one: Finding['verdict'], other: Finding['verdict']): boolean => VERDICTS.indexOf(one) < VERDICTS.indexOf(other);
/** Stops, and what could not be judged: a jet that blows at a corner is not asked how far it goes until it is turned. */
const heldBack = (findings: readonly Finding[]): Set<string> => new Set(findings.filter(({ verdict }) => verdict === 'stop' || verdict === 'not-checked').map(findingKey));
/** Refuses where the trap would run into something, and says what to do first: the rule does not look at what is around it. */
const MAY_REFUSE: readonly string[] = ['P25'];
/** A nozzle takes its pipe along, and a check of nozzles does not look at what the pipe meets there: the trial of a cure, and curing all at once, do. */
const isAboutPipe = ({ rule }: Finding): boolean => rule.startsWith('P');
/** A hole that N5 or N6 stops is judged by N7 only once it is turned away: one cause, one finding. */
const isHandedOn = ({ rule, name }: Finding, before: readonly Finding[]): boolean => rule === 'N7' && before.some((each) => each.name === name && (each.rule === 'N5' || each.rule === 'N6') && each.verdict === 'stop');
/** Asks two things of a pair, how far apart they are and whether they blow at each other: each has its own cure. */
const ASKS_TWICE: readonly string[] = ['N12'];

describe('every ready cure', () => {
  test('clears its own finding, or makes it milder, and brings no stop of a nozzle or a room that was not there', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyCase, (drawn) => {
        const plan = planOf(drawn);
        const { findings } = evaluate(plan);
        const before = heldBack(findings);
        for (const finding of findings.filter(curable)) {
          if (!finding.cure) continue;
          const outcome = applyCure(finding.cure)(plan);
          const told = `${finding.rule} ${finding.name}: ${finding.cure.text}`;
          if (!outcome.ok) {
            if (MAY_REFUSE.includes(finding.rule)) continue;
            throw new Error(`${told}: refused: ${outcome.reason}`);
          }
          const next = evaluate(outcome.next).findings;
          const own = next.find((each) => findingKey(each) === findingKey(finding));
          const brought = next.filter((each) => each.verdict === 'stop' && !before.has(findingKey(each)) && !isAboutPipe(each) && !isHandedOn(each, findings)).map(({ rule, name, text }) => `${rule} ${name}: ${text}`);
          expect([told, ...brought]).toEqual([told]);
          if (own && own.verdict !== 'ok' && !ASKS_TWICE.includes(finding.rule) && !graver(finding.verdict, own.verdict)) throw new Error(`${told}: still ${own.verdict}: ${own.text}`);
          seen.add(finding.rule);
        }
      }),
      { numRuns: 10 },
    );
    // What these plans are made to get wrong.
    for (const rule of ['N1', 'N2', 'N4']) expect(seen).toContain(rule);
  });
});
