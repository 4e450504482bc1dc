import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { PAPERS } from '#shared/paper/papers';
import { drawRiser } from '#shared/sheets/riser/draw-riser';
import { riserBlocks } from '#shared/sheets/riser/riser-blocks';
import { type RiserCircuit, panelWords, riserCircuits, wireWords } from '#shared/sheets/riser/riser-circuits';
import { riserReach } from '#shared/sheets/riser/riser-devices';
import { sheetLayout } from '#shared/sheets/frame';
import { markBox } from '#shared/sheets/text-box';
import { type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { withRelease } from '../../support/releasing-circuit.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const circuitsOf = (plan: Plan, name?: string) => {
  const { derived, design } = evaluate(plan);
  const network = design.networks.find((each) => name === undefined || each.name === name);
  if (!network) throw new Error('No such network.');
  const reach = riserReach(derived, network.ref);
  return { circuits: riserCircuits(reach, network, 'metric'), panel: panelWords(reach, network, 'metric'), wires: wireWords(network.network, 'metric') };
};
const stationsOf = (circuits: readonly RiserCircuit[]) => circuits.flatMap(({ stations }) => stations);
/** Half of the heaviest line on large paper [mm]. */
const LINE_mm = 1;
const titles = (circuits: readonly RiserCircuit[]): string[] => stationsOf(circuits).map(({ title }) => title);

describe('riser of a releasing circuit', () => {
  test('goes from detection to the cylinder, each part once', async () => {
    const { circuits, panel } = circuitsOf((await buildDemo('F2')).plan);
    expect(titles(circuits)).toEqual([
      'Detection, zone 1: 2', 'Detection, zone 2: 2', 'Manual release: 2', 'Abort switch: 2', 'Sounders and lights: 3', 'Shutdowns: 2, as the release matrix says',
      'Disconnect of the release: K1', 'Discharge sounder', 'Release solenoid', 'End-of-line part', 'Low-pressure switch at C1, C2, C3, C4, C5',
    ]);
    expect(panel.title).toBe('Control panel FP1');
  });

  test('every network has the devices of its own rooms only', async () => {
    const { plan } = await buildDemo('F3');
    const names = Object.values(plan.networks).map(({ name }) => stationsOf(circuitsOf(plan, name).circuits).filter(({ title }) => title.startsWith('Detection')).flatMap(({ words }) => words.join()));
    const listed = names.flat().join().match(/D\d+/g) ?? [];
    const all = Object.values(plan.levels).flatMap(({ devices }) => Object.values(devices)).filter(({ kind }) => kind === 'detector');
    expect([...listed].sort()).toEqual(all.map(({ name }) => name).sort());
  });

  // Copper of 14 AWG, solid, at 75 °C: 10.1 Ω/km (3.07 Ω/1000 ft), NEC chapter 9 table 8, memory. 1.5 A over 2 × 30 m lose 0.91 V.
  test('lengths of wire and voltages are those of the plan', () => {
    const { circuits, panel, wires } = circuitsOf(withRelease({ devices: [
      { id: 'b', name: 'Far', kind: 'solenoid', distance_m: 30, current_A: 1.5, leastVoltage_V: 18, wiring: 'tapped' },
      { id: 'a', name: 'Near', kind: 'other', distance_m: 10, current_A: 0, leastVoltage_V: null, wiring: 'in-line' },
    ] }));
    const [near, far] = ['Near', 'Far'].map((name) => stationsOf(circuits).find(({ title }) => title === name));
    expect([near?.wire, far?.wire]).toEqual(['from panel 10.000 m', '20.000 m']);
    expect(far?.words[0]).toBe('wired: on a branch; 30.000 m from the panel, one way');
    const gets = Number(/gets ([\d.]+) V/.exec(far?.words[1] ?? '')?.[1]);
    expect(gets).toBeCloseTo(20.4 - 1.5 * 2 * 30 * 0.0101, 1);
    expect(panel.words).toContain('end of battery: 20.4 V');
    expect(wires[0]).toContain('14 AWG copper, solid; EMT trade size 1/2');
  });

  test('the end-of-line part stands where it is said to', () => {
    const order = (endOfLine: 'before-last' | 'after-last' | 'none' | 'unknown') => stationsOf(circuitsOf(withRelease({ endOfLine })).circuits);
    expect(order('after-last').map(({ title }) => title).indexOf('End-of-line part')).toBeGreaterThan(order('after-last').findIndex(({ title }) => title === 'Solenoid'));
    expect(order('before-last').map(({ title }) => title).indexOf('End-of-line part')).toBeLessThan(order('before-last').findIndex(({ title }) => title === 'Solenoid'));
    for (const at of ['none', 'unknown'] as const) expect(order(at).find(({ title }) => title === 'End-of-line part')?.sign.kind).toBe('missing');
  });

  test('what nobody has said is drawn as not given, never left out', () => {
    const { circuits, panel, wires } = circuitsOf(withRelease(null));
    expect(titles(circuits)).toEqual(['Detection', 'Manual release', 'Abort switch', 'Sounders and lights', 'Shutdowns', 'Disconnect of the release', 'Release device', expect.stringMatching(/^Low-pressure switch/)]);
    for (const { sign, words, title } of stationsOf(circuits)) {
      expect(sign.kind).toBe('missing');
      expect(words.join(), title).toMatch(/not given|none is drawn/);
    }
    expect(panel.title).toBe('Control panel: place not given');
    expect(panel.words.every((each) => each.includes('not given'))).toBe(true);
    expect(wires.every((each) => each.includes('not given'))).toBe(true);
  });

  test.each<DemoName>(['F1', 'F2', 'F3'])('%s: no texts over each other and nothing off its paper, at every true paper size', async (name) => {
    const evaluation = evaluate((await buildDemo(name)).plan);
    for (const paper of Object.values(PAPERS)) {
      const layout = sheetLayout(paper);
      for (const { table } of riserBlocks(evaluation, layout)) {
        const drawings = (table.foot ?? []).flatMap((foot) => (foot.kind === 'drawings' ? foot.drawings : []));
        expect(drawings.length).toBeGreaterThan(0);
        for (const drawing of drawings) {
          const marks = drawing.draw(0, 0);
          expect(textOverlaps(marks), paper.name).toEqual([]);
          for (const mark of marks) {
            const { left, right, top, bottom } = markBox(mark);
            expect(left >= -LINE_mm && right <= drawing.width_mm + LINE_mm && top >= -LINE_mm && bottom <= drawing.height_mm + LINE_mm, `${paper.name}: ${JSON.stringify(mark).slice(0, 90)}`).toBe(true);
          }
          expect(drawing.height_mm, paper.name).toBeLessThan(layout.area.bottom - layout.area.top);
        }
      }
    }
  });

  test('names as long as a plan may hold stay on their paper', () => {
    const long = 'x'.repeat(300);
    const sizes = sheetLayout(PAPERS.A4).sizes;
    const drawing = drawRiser({ title: long, words: [long] }, [{ stations: [{ sign: { kind: 'load' }, title: long, words: [long], wire: long }, { sign: { kind: 'load' }, title: long, words: [], wire: long }] }], [long], 150, sizes);
    expect(textOverlaps(drawing.draw(0, 0))).toEqual([]);
    expect(Math.max(...drawing.draw(0, 0).map((mark) => markBox(mark).right))).toBeLessThanOrEqual(150.5);
  });
});
