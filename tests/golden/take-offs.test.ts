import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { type BillOfMaterials, billOfMaterials } from '#shared/take-off/bill-of-materials';
import type { Plan } from '#shared/model/plan';
import { pieceLabel } from '#shared/sheets/take-off-words';
import { takeOffLines } from '../../src-main/cli/takeoff-text.ts';
import { buildDemo } from '../../src-main/demos/build-demo.ts';

const INCH_m = 0.0254;

/** Engagement that shops allow for [in]. */
const ENGAGED = { '3/4': 9 / 16, '1': 11 / 16, '1-1/4': 11 / 16 } as const;
/** Off at each end by hand: centre-to-end of ASME B16.3 Class 300 (memory), or of the sample's made fittings, less the engagement [in]. */
const OFF = {
  bare: 0,
  elbow34: 1.44 - ENGAGED['3/4'],
  tee34: 1.44 - ENGAGED['3/4'],
  elbow1: 1.63 - ENGAGED['1'],
  elbow114: 1.94 - ENGAGED['1-1/4'],
  /** Sample tee 1-1/4 × 1-1/4 × 1: run and branch. */
  run114: 1.69 - ENGAGED['1-1/4'],
  branch1: 1.81 - ENGAGED['1'],
  /** Sample tee 3/4 × 3/4 × 1, fed through its branch. */
  bull1: 1.5 - ENGAGED['1'],
  bullRun34: 1.56 - ENGAGED['3/4'],
} as const;
type Hand = readonly [piece: string, between_in: number, from: keyof typeof OFF, to: keyof typeof OFF];

/** The whole of the signal hut, from its drawing: 14 in up from the regulator, 7'-3" north, 4'-0" east, the trap and the drop. */
const F1_BY_HAND: readonly Hand[] = [
  ['1–2', 14, 'bare', 'elbow34'],
  ['2–3', 87, 'elbow34', 'elbow34'],
  ['3–4', 48, 'elbow34', 'tee34'],
  ['4–5', 4, 'tee34', 'bare'],
  ['4–6', 4, 'tee34', 'bare'],
];
/** Of the annex: through reducing tees on their run, on their branch and fed through it. */
const F2_BY_HAND: readonly Hand[] = [
  ['1–2', 10, 'bare', 'elbow114'],
  ['2–3', 15, 'elbow114', 'run114'],
  ['3–4', 98, 'branch1', 'elbow1'],
  ['3–17', 36, 'run114', 'run114'],
  ['22–23', 16, 'branch1', 'bull1'],
  ['23–24', 108, 'bullRun34', 'tee34'],
];

function expectByHand({ pieces }: BillOfMaterials, hand: readonly Hand[]): void {
  for (const [label, between_in, from, to] of hand) {
    const piece = pieces.find((each) => pieceLabel(each) === label);
    expect((piece?.centreToCentre_m ?? Number.NaN) / INCH_m, label).toBeCloseTo(between_in, 6);
    expect((piece?.cut_m ?? Number.NaN) / INCH_m, label).toBeCloseTo(between_in - OFF[from] - OFF[to], 6);
  }
}

async function textOf(plan: Plan, head: readonly string[]): Promise<string> {
  const bill = billOfMaterials(derivePlan(plan));
  const names = { networkName: (id: string) => plan.networks[id]?.name ?? id, nozzleName: (network: string, id: string) => plan.networks[network]?.nozzles[id]?.name ?? id };
  return [...head.map((line) => `# ${line}`), plan.info.project, ...takeOffLines(bill, names, plan.settings.lengths, 110), ''].join('\n');
}

describe('take-offs of the demos stay as they are', () => {
  test('F1, every length checked by hand', async () => {
    const { plan } = await buildDemo('F1');
    const bill = billOfMaterials(derivePlan(plan));
    expectByHand(bill, F1_BY_HAND);
    expect(bill.pieces).toHaveLength(F1_BY_HAND.length);
    const text = await textOf(plan, [
      'Checked by hand: every piece. Centre to centre read off the drawing, less 1.44 − 9/16 = 0.8775 in at each elbow and leg of the tee',
      '(ASME B16.3 Class 300, memory; shop engagement); nothing at the regulator, the cap and the nozzle. The sums stand in take-offs.test.ts.',
    ]);
    // By hand: 13.1225 in is 13 1/8, 85.245 is 7′-1 1/4″, 46.245 is 3′-10 1/4″, 3.1225 is 3 1/8.
    for (const cut of ['cut 1\'-1 1/8"', 'cut 7\'-1 1/4"', 'cut 3\'-10 1/4"', 'cut 3 1/8"']) expect(text.replace(/\s+/g, ' ')).toContain(cut);
    await expect(text).toMatchFileSnapshot('signal-hut-take-off.txt');
  });

  test('F2, lengths through reducing tees checked by hand', async () => {
    const { plan } = await buildDemo('F2');
    expectByHand(billOfMaterials(derivePlan(plan)), F2_BY_HAND);
    await expect(await textOf(plan, [
      `Checked by hand: pieces ${F2_BY_HAND.map(([label]) => label).join(', ')}. Centre to centre read off the drawing, less centre-to-end of`,
      'ASME B16.3 Class 300 (memory) and of the sample’s reducing tees, each less the shop engagement. The sums stand in take-offs.test.ts.',
      'The others: the program’s own, held by the properties over a thousand networks.',
    ])).toMatchFileSnapshot('archive-annex-take-off.txt');
  });

  test('F3', async () => {
    const { plan } = await buildDemo('F3');
    await expect(await textOf(plan, ['No length checked by hand: the program’s own, held by the properties over a thousand networks.'])).toMatchFileSnapshot('ferry-control-take-off.txt');
  });
});
