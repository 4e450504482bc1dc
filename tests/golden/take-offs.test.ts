import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { type BillOfMaterials, billOfMaterials } from '#shared/take-off/bill-of-materials';
import type { Plan } from '#shared/model/plan';
import { pieceLabel } from '#shared/sheets/take-off-words';
import { takeOffLines } from '../../src-main/cli/takeoff-text.ts';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { F1_BY_HAND, F2_BY_HAND, F3_BY_HAND, FITTINGS_BY_HAND, type Hand, SCHEDULE_40, cutByHand_in, endsFit } from './by-hand.ts';

const INCH_m = 0.0254;
/** Common practice [in]. */
const STOCK_in = 21 * 12;
const KERF_in = 1 / 8;

/** Every piece that the program lists is one that was reckoned by hand, of the same size and length, and none is missing. */
function expectPieces({ pieces }: BillOfMaterials, nameOf: (network: string) => string, byNetwork: Readonly<Record<string, readonly Hand[]>>): void {
  const listed = Object.fromEntries(pieces.map((piece) => [`${nameOf(piece.network)} ${pieceLabel(piece)}`, piece]));
  const reckoned = Object.entries(byNetwork).flatMap(([network, hands]) => hands.map((hand) => [`${network} ${hand[0]}`, hand] as const));
  expect(Object.keys(listed).sort()).toEqual(reckoned.map(([label]) => label).sort());
  expect(pieces).toHaveLength(reckoned.length);
  for (const [label, hand] of reckoned) {
    expect(endsFit(hand), label).toBe(true);
    expect(listed[label]?.size, label).toBe(hand[1]);
    expect((listed[label]?.centreToCentre_m ?? Number.NaN) / INCH_m, label).toBeCloseTo(hand[2], 6);
    expect((listed[label]?.cut_m ?? Number.NaN) / INCH_m, label).toBeCloseTo(cutByHand_in(hand), 6);
  }
}

/**
 * Sums, weight and bars of each size from the lengths reckoned by hand. No cutting needs fewer bars than the pieces with a
 * cut each would fill end to end, the last cut of a bar being spared; a bar holds its pieces with a cut between them.
 */
function expectOrders({ pipe }: BillOfMaterials, hands: readonly Hand[]): void {
  expect(pipe.map(({ size }) => size).sort()).toEqual([...new Set(hands.map(([, size]) => size))].sort());
  for (const { size, length_m, weight_kg, nesting, reckoned_m } of pipe) {
    const alike = hands.filter((hand) => hand[1] === size);
    const cuts_in = alike.map(cutByHand_in);
    const sum_in = cuts_in.reduce((sum, each) => sum + each, 0);
    const [outside_in, wall_in] = SCHEDULE_40[alike[0]?.[1] ?? '1'];
    expect(length_m / INCH_m, size).toBeCloseTo(alike.reduce((sum, [, , between_in]) => sum + between_in, 0), 6);
    // ASME B36.10M: 10.69·(D − t)·t lb/ft.
    const perFoot_lb = 10.69 * (outside_in - wall_in) * wall_in;
    expect(Math.abs(weight_kg / 0.45359237 / ((perFoot_lb * sum_in) / 12) - 1), size).toBeLessThan(0.001);

    expect(nesting.bars.length, size).toBe(Math.ceil((sum_in + alike.length * KERF_in) / (STOCK_in + KERF_in)));
    expect(nesting.bars.flat().sort((a, b) => a - b)).toEqual(alike.map((_, i) => i));
    for (const bar of nesting.bars) {
      const filled_in = bar.reduce((sum, i) => sum + (reckoned_m[i] ?? Number.NaN) / INCH_m, 0) + (bar.length - 1) * KERF_in;
      expect(filled_in, size).toBeLessThanOrEqual(STOCK_in);
    }
  }
}

function expectFittings({ fittings }: BillOfMaterials, byHand: Readonly<Record<string, number>>): void {
  expect(Object.fromEntries(fittings.map(({ kind, sizes, count }) => [[kind, ...sizes].join(' '), count]))).toEqual(byHand);
}

async function textOf(plan: Plan, head: readonly string[]): Promise<string> {
  const bill = billOfMaterials(derivePlan(plan));
  const names = { networkName: (id: string) => plan.networks[id]?.name ?? id, nozzleName: (network: string, id: string) => plan.networks[network]?.nozzles[id]?.name ?? id };
  return [...head.map((line) => `# ${line}`), plan.info.project, ...takeOffLines(bill, names, plan.settings.lengths, 110), ''].join('\n');
}

const HEAD = [
  'Checked by hand: every piece, fitting and number of bars. Centre to centre read off the drawing, less centre-to-end of',
  'ASME B16.3 Class 300 (memory) and of the sample’s reducing fittings, each less the shop engagement. The sums stand in by-hand.ts.',
];

describe('take-offs of the demos stay as they are', () => {
  test.each([
    ['F1', 'signal-hut', { 'Network 1': F1_BY_HAND }],
    ['F2', 'archive-annex', { 'Network 1': F2_BY_HAND }],
    ['F3', 'ferry-control', F3_BY_HAND],
  ] as const)('%s, every length and count reckoned by hand', async (demo, file, byNetwork) => {
    const { plan } = await buildDemo(demo);
    const bill = billOfMaterials(derivePlan(plan));
    expectPieces(bill, (id) => plan.networks[id]?.name ?? id, byNetwork);
    expectOrders(bill, Object.values<readonly Hand[]>(byNetwork).flat());
    expectFittings(bill, FITTINGS_BY_HAND[demo]);
    await expect(await textOf(plan, HEAD)).toMatchFileSnapshot(`${file}-take-off.txt`);
  });

  test('cut lengths as a tape shows them', async () => {
    // By hand: F1 13.1225, 85.245, 46.245 and 3.1225 in; F2 95.935, 19.185 and 14.065 in; F3 25.0575, 38.7450 and 172.375 in.
    const shown: Readonly<Record<'F1' | 'F2' | 'F3', readonly string[]>> = {
      F1: ['cut 1\'-1 1/8"', 'cut 7\'-1 1/4"', 'cut 3\'-10 1/4"', 'cut 3 1/8"'],
      F2: ['cut 7\'-11 15/16"', 'cut 1\'-7 3/16"', 'cut 1\'-2 1/16"'],
      F3: ['cut 2\'-1 1/16"', 'cut 3\'-2 3/4"', 'cut 14\'-4 3/8"'],
    };
    for (const demo of ['F1', 'F2', 'F3'] as const) {
      const { plan } = await buildDemo(demo);
      const text = (await textOf(plan, [])).replace(/\s+/g, ' ');
      for (const cut of shown[demo]) expect(text, demo).toContain(cut);
    }
  });
});
