import type { DerivedNetwork } from '../../derived/derived.ts';
import { runTreeOf } from '../../isometric/straight-runs.ts';
import { gaugeOf_Pa, toCelsius, toCubicFeet, toLitres, toMillimetres } from '../../units/convert.ts';
import { dischargeBases } from '../discharge/discharge-bases.ts';
import type { DischargeInput, DischargeResult } from '../discharge/discharge.ts';
import type { DischargeSums, NetworkDesign, OrificeSums, ShareSums } from '../design/design.ts';
import { cylinderMassBasis } from '../formulas/cylinder-gas.ts';
import { fittingLossBasis } from '../formulas/fitting-losses.ts';
import { LOSS_SET_WORDS, PROCESS_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { ARITHMETIC, Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, counted, duration, figure, gauge, percentsApart, plainAmount } from './line-text.ts';
import { limitSource } from './profile-source.ts';

const ENDED: Readonly<Record<DischargeResult['ended'], string>> = {
  empty: "the cylinders came down to the room's pressure",
  time: 'the time that is followed was over',
  'gas-limit': 'the gas became colder than its equation holds; what was left is not followed',
};
const TRANSIENT = 'the discharge worked out step by step from these formulas';
const densityBasis = ownBasis('ρ = m_each/V', ARITHMETIC);
const dischargedBasis = ownBasis('m_start − m_left', ARITHMETIC);

/** The way of the agent from the cylinders into the rooms, against time. */
export function dischargeLines(context: LineContext, network: NetworkDesign, pipe: DerivedNetwork): Calculation {
  const draft = new Draft('discharge', 'Discharge', network.ref, network.name);
  draft.with('discharge', network.discharge, (sums) => {
    if (sums.isStale) draft.stale();
    inputLines(draft, context, network, pipe, sums.input);
    methodLines(draft, context, sums.input);
    resultLines(draft, context, network, sums);
    pipeLines(draft, context, pipe, sums);
  });
  draft.with('orifices', network.orifices, (orifices) => orificeLines(draft, context, network, orifices));
  draft.with('shares of the spaces', network.shares, (shares) => shareLines(draft, shares));
  return draft.done();
}

function inputLines(draft: Draft, context: LineContext, { ref, network }: NetworkDesign, { totalLength_m, pipeVolume_m3 }: DerivedNetwork, input: DischargeInput): void {
  const { lengths } = context;
  draft.given('Cylinders', counted(input.cylinders, 'cylinder'), PLAN);
  draft.given('Water volume of one cylinder', `${figure(toLitres(input.cylinderVolume_m3), 4)} L${lengths === 'feet' ? ` = ${figure(toCubicFeet(input.cylinderVolume_m3), 4)} ft³` : ''}`, limitSource(context, ref.id, 'cylinderVolume_m3'));
  // The unit states its pressure of filling in round figures: the discharge starts from what the mass comes to.
  const agent_kg = context.profiles[ref.id]?.limits.agentMass_kg?.value;
  if (agent_kg !== undefined) draft.step('Density of the agent in it, ρ', densityBasis, `${figure(agent_kg)}/${figure(input.cylinderVolume_m3)}`, plainAmount(agent_kg / input.cylinderVolume_m3, 'kg/m³'));
  draft.step(`Pressure at ${figure(toCelsius(input.fillTemperature_K), 3)} °C, p, by that density`, cylinderMassBasis, '', gauge(gaugeOf_Pa(input.fillPressure_Pa), lengths));
  draft.given('Regulator set', input.regulatorPressure_Pa === null ? 'no regulator: the pipe sees the cylinder' : gauge(gaugeOf_Pa(input.regulatorPressure_Pa), lengths), network.assembly.some(({ setPressure_Pa }) => setPressure_Pa !== null) ? PLAN : limitSource(context, ref.id, 'regulatorPressure_Pa'));
  draft.given('Pipe, all together', `${amount(totalLength_m, 'length', lengths)}, ${figure(toLitres(pipeVolume_m3), 4)} L inside`, PLAN);
  const [nozzle] = input.nozzles;
  if (nozzle) draft.given('Coefficient of the nozzles, C_d', figure(nozzle.dischargeCoefficient, 4), limitSource(context, ref.id, 'nozzleCoefficient'));
}

/** What each of the discharge's formulas is about, in their order. */
export const METHOD_LABELS = ['Whole discharge', 'Cylinder', 'Gas', 'Heat from the steel', 'Regulator', 'Flow in the pipe', 'Friction in the pipe', 'Flow of a nozzle', 'Room'] as const;

function methodLines(draft: Draft, { basis }: LineContext, input: DischargeInput): void {
  const said: Readonly<Partial<Record<(typeof METHOD_LABELS)[number], string>>> = {
    Cylinder: PROCESS_WORDS[input.process],
    Gas: input.gas === 'real' ? 'real nitrogen' : 'ideal gas',
    'Friction in the pipe': `roughness ${figure(toMillimetres(basis.pipeRoughness_m), 4)} mm`,
  };
  const isLeftOut = (label: string): boolean => (label === 'Heat from the steel' && input.process !== 'wall-heat') || (label === 'Regulator' && input.regulatorPressure_Pa === null);
  dischargeBases.forEach((each, i) => {
    const label = METHOD_LABELS[i];
    if (label !== undefined && !isLeftOut(label)) draft.step(label, each, '', said[label] ?? 'at every moment');
  });
  draft.step('Losses of fittings', fittingLossBasis[basis.lossSet], '', LOSS_SET_WORDS[basis.lossSet]);
}

function resultLines(draft: Draft, { lengths }: LineContext, network: NetworkDesign, { input, result, slow }: DischargeSums): void {
  draft.given('Agent in the cylinders at the start, m_start', amount(result.massAtStart_kg, 'mass', lengths), TRANSIENT);
  draft.step('Agent discharged', dischargedBasis, `${figure(result.massAtStart_kg)} − ${figure(result.massLeft_kg)}`, amount(result.massAtStart_kg - result.massLeft_kg, 'mass', lengths));
  const main = (label: string, shown: string): void => draft.main(label, ownBasis('', TRANSIENT), '', shown);
  main('Greatest flow', amount(result.peakFlow_kg_s, 'massFlow', lengths));
  main('95 % of the design concentration in the slowest space, gas warmed by the pipe', slow.timeTo95_s === undefined ? 'never reached' : `after ${duration(slow.timeTo95_s)}`);
  main('Greatest pressure in the pipe', gauge(gaugeOf_Pa(result.peakPipePressure_Pa), lengths));
  draft.given(input.regulatorPressure_Pa === null ? 'Coldest gas at the source of the pipe' : 'Coldest gas behind the regulator', amount(result.leastSourceTemperature_K, 'temperature', lengths), TRANSIENT);
  draft.given('Coldest gas in the cylinder', amount(result.leastCylinderTemperature_K, 'temperature', lengths), TRANSIENT);
  draft.given('Followed until', `${duration(result.times_s.at(-1) ?? 0)}: ${ENDED[result.ended]}`, TRANSIENT);
  for (const nozzle of result.nozzles) {
    const parts = [
      amount(nozzle.mass_kg, 'mass', lengths),
      `at most ${amount(nozzle.peakFlow_kg_s, 'massFlow', lengths)}`,
      `at most ${gauge(gaugeOf_Pa(nozzle.peakPressure_Pa), lengths)}`,
      nozzle.isChokedAtPeak ? 'choked' : 'not choked',
    ];
    draft.given(`Nozzle ${network.network.nozzles[nozzle.id]?.name ?? nozzle.id}`, parts.join('; '), TRANSIENT);
  }
}

/** How the nodes of the flow are called: by what is there, else by the number that the isometric and the cut list give them. */
function nodeNames(pipe: DerivedNetwork, { input, nodeIds }: DischargeSums): string[] {
  const nozzles = new Map(pipe.nozzles.map(({ nozzle }) => [nozzle.node, nozzle.name]));
  const numbers = new Map(runTreeOf(pipe).nodes.map((id, i) => [id, i + 1]));
  return Array.from({ length: input.nodeCount }, (_, node) => {
    if (node === 0) return 'source';
    const id = nodeIds[node] ?? '';
    const number = numbers.get(id);
    return nozzles.get(id) ?? (number === undefined ? 'a place without a number' : `node ${number}`);
  });
}

/** More stretches than this would fill sheets that nobody reads: the ones with the least pressure are not what is judged. */
const MOST_STRETCHES = 80;

function pipeLines(draft: Draft, { lengths }: LineContext, pipe: DerivedNetwork, sums: DischargeSums): void {
  const names = nodeNames(pipe, sums);
  const { stretches } = sums.input;
  for (const { from, to, length_m, bore_m, lossFactor } of stretches.slice(0, MOST_STRETCHES)) {
    const peak_Pa = sums.result.nodes[to]?.peakPressure_Pa;
    const size = `${amount(length_m, 'length', lengths)}, bore ${plainAmount(toMillimetres(bore_m), 'mm')}, ΣK ${figure(lossFactor, 3)}`;
    draft.given(`Pipe, ${names[from]} to ${names[to]}`, `${size}${peak_Pa === undefined ? '' : `; at its end at most ${gauge(gaugeOf_Pa(peak_Pa), lengths)}`}`, 'plan; pressure from the discharge');
  }
  if (stretches.length > MOST_STRETCHES) draft.given('Pipe', `${stretches.length - MOST_STRETCHES} more stretches`, PLAN);
}

function orificeLines(draft: Draft, context: LineContext, { ref }: NetworkDesign, orifices: readonly OrificeSums[]): void {
  const { lengths } = context;
  for (const { name, drawn_m2, needed_m2, made } of orifices) {
    const isMade = made !== undefined && drawn_m2 !== null && Math.abs(made.area_m2 - drawn_m2) <= 1e-9 * drawn_m2;
    const nearest = made ? `nearest made ${made.code}, ${amount(made.area_m2, 'orificeArea', lengths)}` : 'none is made near it';
    const drawn = drawn_m2 === null ? 'not chosen on the plan' : `on the plan ${isMade ? `${made.code}, ` : ''}${amount(drawn_m2, 'orificeArea', lengths)}`;
    draft.given(`Orifices of nozzle ${name}`, [`needed ${amount(needed_m2, 'orificeArea', lengths)}`, ...(isMade ? [] : [nearest]), drawn].join('; '), `even share of the flow that the manual states; ${limitSource(context, ref.id, 'peakFlow_kg_s')}`);
  }
}

function shareLines(draft: Draft, shares: readonly ShareSums[]): void {
  if (shares.length < 2) return;
  for (const { space, flowShare, volumeShare } of shares) {
    const flow = percentsApart(flowShare * 100, volumeShare * 100);
    draft.given(`${space.name}: share of the agent, of the volume`, `${flow.value}, ${flow.limit}`, 'discharge; plan');
  }
}
