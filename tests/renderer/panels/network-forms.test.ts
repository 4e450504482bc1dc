import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { at3, layout } from '../../support/layout.ts';
import { freshPart, partAs } from '../../../src-renderer/panels/network/assembly-slip.tsx';
import { bendsText, readBends } from '../../../src-renderer/panels/network/bends-text.ts';
import { changedAt, freeId, shifted, without } from '../../../src-renderer/panels/network/list-edits.ts';
import { beginningsOf } from '../../../src-renderer/panels/network/network-form.tsx';
import { notYetTaken, orificeWith, takeOrifices } from '../../../src-renderer/panels/network/orifices-slip.tsx';
import { startingCircuit } from '../../../src-renderer/panels/network/start-circuit.ts';
import { sizesWithoutSpan } from '../../../src-renderer/panels/network/supports-slip.tsx';
import { readOrifices } from '../../../src-renderer/panels/dialogs/orifice-lines.ts';
import { alongFrom, standingSupport } from '../../../src-renderer/tools/support-place.ts';

describe('lists of parts', () => {
  test('move, change and take out one thing, and leave the ends alone', () => {
    expect(shifted(['a', 'b', 'c'], 1, -1)).toEqual(['b', 'a', 'c']);
    expect(shifted(['a', 'b'], 1, 1)).toEqual(['a', 'b']);
    expect(without(['a', 'b', 'c'], 1)).toEqual(['a', 'c']);
    expect(changedAt([{ n: 1 }, { n: 2 }], 1, { n: 5 })).toEqual([{ n: 1 }, { n: 5 }]);
  });

  test('a new id is no other’s, whatever was taken out before', () => {
    expect(freeId([], 'part')).toBe('part-1');
    expect(freeId([{ id: 'part-7' }, { id: 'hose' }], 'part')).toBe('part-8');
  });

  test('a part keeps a name that somebody gave it, and only a regulator has a set pressure', () => {
    const part = { ...freshPart([], 'regulator'), setPressure_Pa: 6e6 };
    expect(partAs(part, 'hose')).toMatchObject({ kind: 'hose', name: 'Hose', setPressure_Pa: null });
    expect(partAs({ ...part, name: 'R1' }, 'adapter').name).toBe('R1');
  });
});

describe('bends of a stretch of conduit', () => {
  test.each([
    ['90 90 45', 3],
    ['90°, 90°', 2],
    ['90;30', 2],
    ['', 0],
  ])('“%s”', (typed, count) => {
    const read = readBends(typed, 'feet');
    expect(read.ok && read.value.length).toBe(count);
  });

  test('what is written reads back', () => {
    const bends = [Math.PI / 2, Math.PI / 4];
    const read = readBends(bendsText(bends, 'metric'), 'metric');
    expect(read.ok && read.value.map((bend) => bend.toFixed(6))).toEqual(bends.map((bend) => bend.toFixed(6)));
  });

  test.each(['200', '-10', 'ninety', Array.from({ length: 51 }, () => '10').join(' ')])('“%s” is refused with a reason', (typed) => {
    expect(readBends(typed, 'feet')).toMatchObject({ ok: false, reason: expect.any(String) });
  });
});

test('a circuit begins with one solenoid and guesses nothing', () => {
  expect(startingCircuit()).toMatchObject({ supply_V: 20.4, devices: [{ kind: 'solenoid', distance_m: null, current_A: null, leastVoltage_V: null }], panelCurrent_A: null, conduit: null, pressureSwitch: null });
});

describe('orifices typed or pasted', () => {
  const listed = [{ code: 'S58', area_m2: 26e-6 }];

  test('lines of a table, with any blanks between and any unit', () => {
    const { orifices, faults } = readOrifices('S60\t30.5\n S40   0.02 in2\r\n\nS62; 0,5 cm²', listed, 'metric');
    expect(faults).toEqual([]);
    expect(orifices.map(({ code }) => code)).toEqual(['S40', 'S58', 'S60', 'S62']);
    expect(orifices.find(({ code }) => code === 'S60')?.area_m2).toBeCloseTo(30.5e-6, 12);
    expect(orifices.find(({ code }) => code === 'S40')?.area_m2).toBeCloseTo(0.02 * 0.0254 ** 2, 12);
    expect(orifices.find(({ code }) => code === 'S62')?.area_m2).toBeCloseTo(50e-6, 12);
  });

  test('a bare area is in the plan’s unit; a known code gets the new one', () => {
    const { orifices } = readOrifices('S58 0.04', listed, 'feet');
    expect(orifices).toHaveLength(1);
    expect(orifices[0]?.area_m2).toBeCloseTo(0.04 * 0.0254 ** 2, 12);
  });

  test('what cannot be read is named by its line, the others are taken', () => {
    const { orifices, faults } = readOrifices('S61 31\nS62\nS63 wide\nS64 -3\nS65 3 m²', listed, 'metric');
    expect(orifices.map(({ code }) => code)).toEqual(['S58', 'S61']);
    expect(faults.map((fault) => fault.slice(0, 7))).toEqual(['Line 2:', 'Line 3:', 'Line 4:', 'Line 5:']);
  });
});

describe('taking orifices', () => {
  const plan = layout({ runs: [{ places: [at3(0, 0, 2), at3(2, 0, 2)] }], nozzles: [{ at: at3(2, 0, 2) }] });
  const made = { code: 'S58', area_m2: 26e-6 };
  const sums = { ref: { kind: 'nozzle' as const, network: 'net', id: 'n1' }, name: 'N1', drawn_m2: null, needed_m2: 26.1e-6, made };

  test('gives each nozzle the one that is made, as one step', () => {
    const outcome = takeOrifices([sums])(plan);
    expect(outcome.ok && outcome.next.networks.net?.nozzles.n1?.orificeArea_m2).toBe(26e-6);
    expect(outcome.ok && outcome.label).toBe('Take the orifice of N1');
    expect(orificeWith([made], 26e-6)).toEqual(made);
    expect(orificeWith([made], 27e-6)).toBeUndefined();
  });

  test('nothing is left to take once it is drawn, and nothing where none is made', () => {
    expect(notYetTaken([sums])).toEqual([sums]);
    expect(notYetTaken([{ ...sums, drawn_m2: 26e-6 }, { ...sums, made: undefined }])).toEqual([]);
  });
});

describe('what a network offers its form', () => {
  const plan = layout({ runs: [{ places: [at3(0.2, 0.2, 2), at3(0.2, 3, 2), at3(3, 3, 2)], size: '3/4' }], nozzles: [{ at: at3(3, 3, 2) }] });
  const network = plan.networks.net;
  if (!network) throw new Error('The layout has its network.');

  test('pipe begins at an open end, never at a nozzle', () => {
    expect(beginningsOf(network)).toEqual([{ node: 'k1', away_m: 0, z_m: 2 }]);
    expect(beginningsOf({ ...network, source: 'k2' }).map(({ node }) => node)).toEqual(['k1', 'k2']);
  });

  test('sizes that the table leaves out are named', () => {
    const [shape] = derivePlan(plan).networks;
    expect(shape && sizesWithoutSpan(shape, 'b31.1')).toEqual(['3/4']);
    expect(shape && sizesWithoutSpan(shape, 'iso-14520')).toEqual([]);
  });

  test('a support is measured from the nearer end of its pipe', () => {
    const support = { id: 's', at: { x: 0.2, y: 2.5, z: 2 }, kind: 'rigid' as const, capacity_N: null, brace: 'none' as const };
    const standing = standingSupport(network, support);
    expect(standing).toMatchObject({ fromEnd_m: 0.5, length_m: expect.closeTo(2.8, 9), end: { y: 3 } });
    expect(standing && alongFrom(standing, 0.1)).toMatchObject({ x: 0.2, y: expect.closeTo(2.9, 9), z: 2 });
    expect(standingSupport(network, { ...support, at: { x: 1, y: 1, z: 2 } })).toBeUndefined();
  });
});
