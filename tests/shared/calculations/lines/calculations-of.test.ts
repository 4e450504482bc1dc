import { describe, expect, test } from 'vitest';
import { dischargeBases } from '#shared/calculations/discharge/discharge-bases';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { wallHeatBasis } from '#shared/calculations/formulas/cylinder-wall-heat';
import { churchillBasis } from '#shared/calculations/formulas/friction';
import { nitrogenBasis } from '#shared/calculations/formulas/nitrogen';
import { CALCULATION_TOPICS, type Calculation } from '#shared/calculations/lines/calculation';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { METHOD_LABELS } from '#shared/calculations/lines/discharge-lines';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { isPrintable } from '#shared/sheets/font-widths';
import { type DemoName, buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { at3, layout } from '../../../support/layout.ts';
import { missedResult } from '../../../support/written-sum.ts';

const of = (plan: Plan): Calculation[] => calculationsOf(evaluate(plan, workedDischarge()));
const demo = async (name: DemoName, change: (plan: Plan) => void = () => undefined): Promise<Calculation[]> => {
  const plan = structuredClone((await buildDemo(name)).plan);
  change(plan);
  return of(plan);
};
const enclosures = (plan: Plan) => Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures));
const find = (calculations: readonly Calculation[], title: string, subject = ''): Calculation => {
  const found = calculations.find((one) => one.title === title && one.subjectName.includes(subject));
  if (!found) throw new Error(`There is no “${title}” of “${subject}”.`);
  return found;
};
const result = ({ lines }: Calculation, label: string): string => lines.find((line) => line.label.startsWith(label))?.result ?? `no line “${label}”`;

/** Variants that bring every branch of a formula onto paper. */
const VARIANTS: readonly (readonly [string, DemoName, (plan: Plan) => void])[] = [
  ['as drawn', 'F1', () => undefined],
  ['several networks', 'F3', () => undefined],
  ['a void and beams', 'F2', () => undefined],
  ['with its faults', 'F2-faults', () => undefined],
  ['metric', 'F1', (plan) => { plan.settings.lengths = 'metric'; }],
  ['at 1500 m', 'F1', (plan) => { for (const enclosure of enclosures(plan)) enclosure.altitude_m = 1500; }],
  ['by the standard atmosphere at 300 m', 'F1', (plan) => { for (const enclosure of enclosures(plan)) enclosure.altitude_m = 300; plan.basis.altitudeMethod = 'isa'; }],
  ['by the other logarithm', 'F1', (plan) => { plan.basis.logarithm = '2.303'; }],
  ['below freezing', 'F1', (plan) => { for (const enclosure of enclosures(plan)) enclosure.temperature = { least_K: 253.15, greatest_K: 268.15 }; }],
  ['with a bias and three quarters of the leaks below', 'F1', (plan) => { plan.basis.bias_Pa = 1.5; plan.basis.leakFraction = 0.75; plan.basis.holdModel = 'mixing'; }],
  ['leaks counted as vent, hottest agent', 'F1', (plan) => { plan.basis.ventCountsLeakage = true; plan.basis.ventTemperature = 'hottest'; plan.basis.ventFlow = 'calculated'; }],
  ['welded pipe of the newer stresses', 'F2', (plan) => {
    plan.basis.stressSet = 'newer';
    for (const network of Object.values(plan.networks)) for (const pipe of Object.values(network.pipes)) pipe.joint = 'welded';
  }],
];

describe('calculation lines', () => {
  test.each(VARIANTS)('numbers give their result when somebody works them out by hand: %s', async (_, name, change) => {
    let worked = 0;
    for (const { lines, title } of await demo(name, change)) {
      worked += lines.filter(({ numbers }) => numbers !== '').length;
      for (const line of lines) expect(missedResult(line), title).toBeUndefined();
    }
    expect(worked).toBeGreaterThan(25);
  });

  test.each(VARIANTS)('every character can be printed and no line is bare: %s', async (_, name, change) => {
    const printed = new Set<string>();
    for (const { lines, cautions, missing, title, subjectName } of await demo(name, change)) {
      expect(title).not.toBe('');
      for (const line of lines) {
        expect(line.label).not.toBe('');
        expect(line.result, line.label).not.toMatch(/^$|NaN|undefined|Infinity|not known \w/);
        for (const words of [line.label, line.formula, line.numbers, line.result, line.source]) for (const character of words.normalize('NFC')) printed.add(character);
      }
      for (const sentence of [...cautions, ...missing]) expect(sentence, `${title} of ${subjectName}`).toMatch(/[.!?]$/);
      expect(new Set(cautions).size).toBe(cautions.length);
      expect(new Set(missing).size).toBe(missing.length);
    }
    expect([...printed].filter((character) => !isPrintable(character))).toEqual([]);
  });

  // Worked by hand from the formulas of EN 15004-8:2008 for the invented rooms of the demos.
  test.each([
    ['F1', 'Agent quantity', 'Signal hut', 'Mass needed', '24.13 kg = 53.19 lb'],
    ['F1', 'Agent quantity', 'Signal hut', 'Least volume', '38.95 m³ = 1375.6 ft³'],
    ['F1', 'Agent quantity', 'Signal hut', 'Greatest volume', '40.82 m³ = 1441.4 ft³'],
    ['F1', 'People and oxygen', 'Signal hut', 'Oxygen when hottest, O2', '12.15 %'],
    ['F1', 'Relief vent', 'Signal hut', 'Free area needed', '0.02418 m² = 0.2602 ft²'],
    ['F2', 'Agent quantity', 'annex', 'Mass needed', '120.9 kg = 266.6 lb'],
    ['F2', 'Agent quantity', 'annex', 'Cylinders needed', '5 cylinders'],
    ['F2', 'People and oxygen', 'annex', 'Oxygen when hottest, O2', '12.17 %'],
    ['F3', 'People and oxygen', '201', 'Oxygen when hottest, O2', '12.14 %'],
    ['F3', 'People and oxygen', '205', 'Oxygen when hottest, O2', '12.05 %'],
  ] as const)('%s: %s of %s, %s is %s', async (name, title, subject, label, shown) => {
    expect(result(find(await demo(name), title, subject), label)).toBe(shown);
  });

  test('a mass of agent that falls short by a hair is not rounded to enough', async () => {
    const short = await demo('F1', (plan) => {
      for (const profile of Object.values(plan.profiles)) if (profile.limits.agentMass_kg) profile.limits.agentMass_kg.value = 24.1272;
    });
    const agent = find(short, 'Agent quantity');
    expect(result(agent, 'Agent installed')).not.toBe(result(agent, 'Mass needed'));
    expect(result(agent, 'Reserve')).toMatch(/^−0\.0000\d* kg.*: too little$/);
    expect(result(agent, 'Cylinders needed')).toBe('2 cylinders');
  });

  const everyWall = (plan: Plan, change: (wall: ReturnType<typeof enclosures>[number]['outline'][number]['wall']) => void): void => {
    for (const { outline } of enclosures(plan)) for (const { wall } of outline) change(wall);
  };
  const everyNetwork = (plan: Plan, change: (network: Plan['networks'][string]) => void): void => Object.values(plan.networks).forEach(change);
  // A result that misses its limit says so in words, beside the figure.
  test.each<[string, string, string, RegExp, (plan: Plan) => void]>([
    ['a low concentration', 'Agent quantity', 'Design concentration', /: below the minimum$/, (plan) => { for (const one of enclosures(plan)) one.concentration_pct = 40.29; }],
    ['a room too large', 'Agent quantity', 'This enclosure with', /: too large$/, (plan) => { for (const one of enclosures(plan)) one.height_m = 2.6; }],
    ['a room too small', 'Agent quantity', 'This enclosure with', /: too small$/, (plan) => { for (const one of enclosures(plan)) one.height_m = 2.2; }],
    ['a short stay', 'People and oxygen', 'Longest stay', /: shorter than the design counts on$/, (plan) => { for (const one of enclosures(plan)) one.height_m = 2.2; }],
    ['a short delay', 'People and oxygen', 'Time to spare', /^−5 s: people are still inside$/, (plan) => { for (const one of enclosures(plan)) one.people = { ...one.people, egress_s: 35, delay_s: 30 }; }],
    ['no vent', 'Relief vent', 'Free area provided', /^0 m².*: too little$/, (plan) => { for (const one of enclosures(plan)) one.openings = {}; }],
    ['a weak wall', 'Relief vent', 'Free area provided', /: too little$/, (plan) => everyWall(plan, (wall) => { wall.allowablePressure_Pa = 240; })],
    ['large leaks', 'Hold time', 'Hold time, wide interface', /: too short$/, (plan) => { for (const one of enclosures(plan)) one.leakage = { kind: 'area', area_m2: 0.05, pressure_Pa: 10 }; }],
    ['a slow discharge', 'Filling of the room', 'Reached in the slowest space', /: too late$/, (plan) => { plan.basis.designSet = 'nfpa-2001-2008'; }],
    ['thin pipe', 'Strength of pipe and fittings', 'After the regulator: weakest part', /: too weak$/, (plan) => { plan.basis.millFactor = 0.7; plan.basis.pipeSpecification = 'A53-F'; }],
    ['a support too far', 'Supports, thrust and mounting', 'Last support of nozzle', /: too far$/, (plan) => everyNetwork(plan, (network) => { network.supports = Object.fromEntries(Object.entries(network.supports).slice(1)); })],
    ['weak supports', 'Supports, thrust and mounting', 'Nozzle N1: all holes open', /: too little$/, (plan) => everyNetwork(plan, (network) => { for (const support of Object.values(network.supports)) support.capacity_N = 71; })],
    ['a weak cylinder wall', 'Supports, thrust and mounting', 'C1: Wall', /: too little$/, (plan) => everyWall(plan, (wall) => { wall.capacity_N = 1618; })],
    ['a long wire', 'Releasing circuit', 'Voltage at Release solenoid', /: too low$/, (plan) => everyNetwork(plan, ({ release }) => { for (const device of release?.devices ?? []) device.distance_m = 90; })],
    ['a weak panel', 'Releasing circuit', 'Current of all devices', /^1\.6 A: more than the panel gives$/, (plan) => everyNetwork(plan, ({ release }) => { if (release) release.panelCurrent_A = 1.5; })],
    ['a full conduit', 'Releasing circuit', 'Area that', /: the conduit is too full$/, (plan) => everyNetwork(plan, ({ release }) => { if (release) release.conductors = [{ type: 'THHN', wireGauge: '10', count: 9 }]; })],
    ['many bends', 'Releasing circuit', 'Bends of', /: too many$/, (plan) => everyNetwork(plan, ({ release }) => { if (release) release.pulls = [{ name: 'Pull', bends_rad: Array.from({ length: 5 }, () => Math.PI / 2) }]; })],
  ])('%s is said in words', async (_, title, label, words, change) => {
    const [clean, faulty] = [await demo('F1'), await demo('F1', change)];
    expect(result(find(faulty, title), label)).toMatch(words);
    expect(result(find(clean, title), label)).not.toMatch(words);
  });

  test('topics stand in the order of a design, each sum under the thing it is about', async () => {
    const calculations = await demo('F3');
    const order = calculations.map(({ topic }) => CALCULATION_TOPICS.indexOf(topic));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(calculations.map(({ topic }) => topic)).size).toBe(CALCULATION_TOPICS.length);
    expect(calculations.filter(({ topic }) => topic === 'agent').map(({ subject, subjectName }) => [subject.kind, subjectName])).toContainEqual(['enclosure', 'Room 206']);
    expect(calculations.filter(({ topic }) => topic === 'wiring').every(({ subject }) => subject.kind === 'network')).toBe(true);
  });

  test('every formula of the discharge has its own name on paper', async () => {
    expect(METHOD_LABELS).toHaveLength(dischargeBases.length);
    const { lines } = find(await demo('F1'), 'Discharge');
    const formulaOf = (label: string): string | undefined => lines.find((line) => line.label === label)?.formula;
    expect([formulaOf('Gas'), formulaOf('Heat from the steel'), formulaOf('Friction in the pipe')]).toEqual([nitrogenBasis.formula, wallHeatBasis.formula, churchillBasis.formula]);
    expect(formulaOf('Flow of a nozzle')).toContain('choked');
    expect(formulaOf('Regulator')).toContain('p_set');
    expect(formulaOf('Flow in the pipe')).toContain('f·L/D');
    expect(formulaOf('Room')).toContain('T_room');
    const adiabatic = find(await demo('F1', (plan) => { plan.basis.cylinderProcess = 'adiabatic'; }), 'Discharge');
    expect(adiabatic.lines.some(({ label }) => label === 'Heat from the steel')).toBe(false);
  });

  test('the chosen method is named in words', async () => {
    const calculations = await demo('F1', (plan) => {
      plan.basis.altitudeMethod = 'nfpa';
      plan.basis.designSet = 'nfpa-2001-2012';
    });
    expect(result(find(calculations, 'Agent quantity'), 'Methods')).toContain('altitude by the NFPA 2001 table');
    expect(result(find(calculations, 'Filling of the room'), 'Edition')).toBe('NFPA 2001 of 2012 to 2018');
  });

  test('a last result is marked while a new one is worked out', async () => {
    const { plan } = await buildDemo('F1');
    const fresh = workedDischarge();
    const stale = calculationsOf(
      evaluate(plan, (network, input) => {
        const known = fresh(network, input);
        return typeof known === 'object' ? { ...known, isStale: true } : known;
      }),
    );
    expect(stale.filter(({ isStale }) => isStale).map(({ title }) => title)).toEqual(expect.arrayContaining(['Discharge', 'Filling of the room', 'Relief vent']));
    expect(find(stale, 'Agent quantity').isStale).toBe(false);
  });
});

describe('what is not known', () => {
  const bare = layout({ height_m: null, nozzles: [{ at: at3(3, 2, 2.5) }], runs: [{ places: [at3(0.2, 2, 2.5), at3(3, 2, 2.5)] }] });

  test('a room without a height has no number that rests on it, and says why', () => {
    const agent = find(of(bare), 'Agent quantity');
    expect(agent.missing).toContain('Not worked out (net volume, mass of agent, volumes that full cylinders fit): the height of “Room” is not known.');
    expect(agent.lines.filter(({ numbers, isMain }) => numbers !== '' || isMain).map(({ label }) => label)).toEqual(['Agent installed, m_in']);
    expect(find(of(bare), 'People and oxygen').missing.join(' ')).toContain('the height of “Room” is not known.');
  });

  test('every calculation of a bare plan says what is missing and states no main result of it', () => {
    for (const { title, missing, lines } of of(bare)) {
      // What rests on the profile alone is known all the same.
      if (title === 'Strength of pipe and fittings' || title === 'Agent quantity') continue;
      expect(missing.length, title).toBeGreaterThan(0);
      if (title !== 'Supports, thrust and mounting') expect(lines.filter(({ isMain }) => isMain), title).toEqual([]);
    }
  });

  test('one reason is given once for all that it stops', () => {
    for (const { missing } of of(bare)) {
      const reasons = missing.map((sentence) => sentence.slice(sentence.indexOf('): ') + 3));
      expect(new Set(reasons).size).toBe(reasons.length);
    }
  });

  test('a releasing circuit that is not drawn up is named', () => {
    expect(find(of(bare), 'Releasing circuit').missing).toContain('Not worked out (voltage at the devices, fill of the conduit): the releasing circuit of “Network” is not drawn up.');
  });
});
