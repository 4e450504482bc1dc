import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boughtFittingsOf, fittingSizesOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Derived, DerivedNetwork } from '#shared/derived/derived';
import { layoutIsometric } from '#shared/isometric/layout-isometric';
import { parsePlan } from '#shared/model/parse-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { PIPE_SIZES, type PipeSize } from '#shared/profile/pipe-table';
import { planContents } from '#shared/sheets/plan-content';
import { fittingTable } from '#shared/sheets/take-off-tables';
import { type BillOfMaterials, billOfMaterials } from '#shared/take-off/bill-of-materials';
import { type Piece, STOCK_LENGTH_m } from '#shared/take-off/pieces-of';
import { anyBuiltPlan, firstNetwork } from './any-network.ts';

type Vector = readonly [number, number, number];
const dot = ([a, b, c]: Vector, [d, e, f]: Vector): number => a * d + b * e + c * f;
const rank = (size: PipeSize): number => PIPE_SIZES.indexOf(size);

/** A leg of a node: which way it leaves, and its size. */
interface NodeLeg {
  readonly pipe: string;
  readonly way: Vector;
  readonly size: PipeSize;
}

function legsAt({ networks }: Plan, node: string): NodeLeg[] {
  const [network] = Object.values(networks);
  const here = network?.nodes[node]?.at;
  return Object.values(network?.pipes ?? {}).flatMap(({ id, from, to, size }): NodeLeg[] => {
    const there = network?.nodes[from === node ? to : to === node ? from : '']?.at;
    if (!here || !there) return [];
    const [x, y, z] = [there.x - here.x, there.y - here.y, there.z - here.z];
    const length = Math.hypot(x, y, z);
    return [{ pipe: id, way: [x / length, y / length, z / length], size }];
  });
}

/** Two legs that run straight through each other. */
function straightPair(legs: readonly NodeLeg[]): readonly [NodeLeg, NodeLeg] | undefined {
  for (const a of legs) for (const b of legs) if (a !== b && dot(a.way, b.way) < -0.9999) return [a, b];
  return undefined;
}

/** What must stand at a node, told from the directions and sizes of its legs alone; undefined: no made fitting is like it. */
function demanded(legs: readonly NodeLeg[], part: string | null): readonly string[] | undefined {
  const [a, b] = legs;
  if (legs.length === 1) return part === 'plug' ? ['plug', 'coupling'] : [part === 'drain' ? 'drain' : 'cap'];
  if (legs.length === 2 && a && b) {
    const cosine = dot(a.way, b.way);
    if (cosine < -0.9999) return a.size !== b.size ? ['reducer'] : part === 'union' || part === 'coupling' ? [part] : [];
    if (Math.abs(cosine) < 1e-6) return ['elbow-90'];
    return Math.abs(cosine + Math.SQRT1_2) < 1e-6 ? ['elbow-45'] : undefined;
  }
  const run = straightPair(legs);
  const branches = legs.filter((leg) => !run?.includes(leg));
  const isSquare = run !== undefined && branches.every(({ way }) => Math.abs(dot(way, run[0].way)) < 1e-6);
  const [c, d] = branches;
  const isFlat = branches.length < 2 || (branches.length === 2 && c !== undefined && d !== undefined && dot(c.way, d.way) < -0.9999);
  if (!isSquare || !isFlat) return undefined;
  return [legs.length === 3 ? 'tee' : 'cross'];
}

const tally = (kinds: readonly string[]): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const kind of [...kinds].sort()) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
};

function expectDemanded(plan: Plan, network: DerivedNetwork): void {
  const bought = boughtFittingsOf(network);
  const nozzles = new Set(Object.values(network.network.nozzles).map(({ node }) => node));
  for (const { id, part } of Object.values(network.network.nodes)) {
    const legs = legsAt(plan, id);
    const here = bought.filter(({ node }) => node === id);
    if (legs.length === 0 || id === network.network.source || (legs.length === 1 && nozzles.has(id))) {
      expect(here).toEqual([]);
      continue;
    }
    const kinds = demanded(legs, part);
    if (!kinds) expect(here.some(({ kind }) => kind === 'odd-bend')).toBe(true);
    else if (!(legs.length === 2 && nozzles.has(id) && kinds.length === 0)) expect(here.map(({ kind }) => kind)).toEqual(kinds);
    const [only] = here;
    const run = straightPair(legs);
    if (only?.kind === 'tee' && kinds && run) {
      const sizes = [...run].map(({ size }) => size).sort((a, b) => rank(b) - rank(a));
      const branch = legs.find((leg) => !run.includes(leg));
      const named = [...sizes, branch?.size];
      expect(fittingSizesOf(only)).toEqual(new Set(named).size === 1 ? named.slice(0, 1) : named);
      expect(only.made?.reaches_m).toHaveLength(3);
      expect(only.legs[2]?.pipe).toBe(branch?.pipe);
    }
    if (only?.kind === 'elbow-90' || only?.kind === 'elbow-45' || only?.kind === 'reducer') {
      const sizes = [...new Set(legs.map(({ size }) => size))].sort((a, b) => rank(b) - rank(a));
      expect(fittingSizesOf(only)).toEqual(sizes);
    }
  }
}

function expectOneCount(derived: Derived, network: DerivedNetwork, bill: BillOfMaterials): void {
  const bought = tally(boughtFittingsOf(network).map(({ kind }) => kind));
  const many = (kind: string, count: number): string[] => Array.from({ length: count }, () => kind);
  const atNodes = (list: BillOfMaterials['fittings']): Record<string, number> => tally(list.filter(({ place }) => place === 'node').flatMap(({ kind, count }) => many(kind, count)));
  expect(atNodes(bill.fittings)).toEqual(bought);
  const json: BillOfMaterials = JSON.parse(JSON.stringify(bill));
  expect(atNodes(json.fittings)).toEqual(bought);
  const drawn = layoutIsometric(network, { view: 'south-east', shares: new Map() });
  expect(tally(drawn.fittings.map(({ fitting }) => fitting.kind))).toEqual(bought);
  expect(tally(drawn.nodes.flatMap(({ fittings }) => fittings.map(({ kind }) => kind)))).toEqual(bought);
  const onPlans = planContents(derived).flatMap(({ networks }) => networks.flatMap(({ fittings }) => fittings.map(({ kind }) => kind)));
  expect(tally(onPlans)).toEqual(bought);
  const scheduled = fittingTable(bill, derived.plan.settings.lengths).rows.reduce((sum, row) => sum + Number(row.at(-1)), 0);
  expect(scheduled).toBe(bill.fittings.reduce((sum, { count }) => sum + count, 0));
  const numbers = new Map(drawn.nodes.map(({ id, number }) => [id, String(number)]));
  for (const { from, to } of bill.pieces) for (const end of [from, to]) if (end.node !== null) expect(end.label).toBe(numbers.get(end.node));
}

function expectWhole(network: DerivedNetwork, pieces: readonly Piece[]): void {
  let sum_m = 0;
  for (const { from, to, cut_m, centreToCentre_m, because, isTooShort } of pieces) {
    const isOdd = [from, to].some(({ kind }) => kind === 'odd-bend' || kind === 'unfitted');
    const taken_m = [from, to].map(({ takeOff }) => (takeOff.isKnown ? takeOff.takeOff_m : Number.NaN));
    if (cut_m === null) {
      // With a made fitting for everything, only angles that are not made and fittings that touch leave a piece without a length.
      expect(isOdd || isTooShort).toBe(true);
      expect(because).not.toEqual([]);
      sum_m += centreToCentre_m;
    } else {
      expect(cut_m).toBeGreaterThan(0);
      expect(cut_m).toBeLessThanOrEqual(STOCK_LENGTH_m + 1e-9);
      sum_m += cut_m + (taken_m[0] ?? Number.NaN) + (taken_m[1] ?? Number.NaN);
    }
  }
  expect(Math.abs(sum_m - network.totalLength_m)).toBeLessThan(1e-9);
}

describe('a thousand networks as they are built', () => {
  test('cut pieces and take-offs add up; every node has the fitting that it demands; plan, isometric, schedule, bill and its file count the same; saved and read again all is the same', () => {
    const seen = { fittings: {} as Record<string, number>, reducing: 0, stock: 0, cut: 0 };
    fc.assert(
      fc.property(anyBuiltPlan, fc.nat(9), (plan, turn) => {
        const derived = derivePlan(plan);
        const network = firstNetwork(plan);
        const bill = billOfMaterials(derived);
        expectWhole(network, bill.pieces);
        expectDemanded(plan, network);
        expectOneCount(derived, network, bill);
        if (turn === 0) {
          const again = parsePlan(printPlan(plan));
          if (!again.ok) throw new Error('The plan was not read again.');
          expect(billOfMaterials(derivePlan(again.plan))).toEqual(bill);
        }
        for (const { kind, sizes, place, count } of bill.fittings) {
          seen.fittings[kind] = (seen.fittings[kind] ?? 0) + count;
          if (sizes.length > 1) seen.reducing += count;
          if (place === 'stock') seen.stock += count;
        }
        seen.cut += bill.pieces.filter(({ cut_m }) => cut_m !== null).length;
      }),
      { numRuns: 1000 },
    );
    // What was tried: every kind, and most pieces with a cut length.
    for (const kind of ['elbow-90', 'elbow-45', 'tee', 'cross', 'reducer', 'union', 'coupling', 'cap', 'plug', 'drain']) expect(seen.fittings[kind], kind).toBeGreaterThan(20);
    expect(Math.min(seen.reducing, seen.stock, seen.cut / 4)).toBeGreaterThan(500);
  }, 300_000);
});
