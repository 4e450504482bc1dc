import type { EnclosureDesign, HoldSums, LeakSums } from '../design/design.ts';
import { AIR_kg_m3, bothDirectionsBasis, leakageAreaBasis } from '../formulas/door-fan.ts';
import { allowedLeakageBasis, gasHeightLeftBasis, gasHeightLeft_m, gasInterfaceBasis } from '../formulas/hold-leakage.ts';
import { fanFlowBasis, interfaceTimeBasis, leakDrive, leakDriveBasis, mixingTimeBasis, mixtureDensityBasis, wideInterfaceHeightBasis, wideInterfaceHeight_m } from '../formulas/hold-time.ts';
import type { Basis } from '../topic.ts';
import { nitrogenVolumeBasis } from './agent-lines.ts';
import { HOLD_MODEL_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { CHOSEN, Draft, type LineContext, PLAN, ownBasis, partOf } from './draft.ts';
import { amount, amountsApart, bracketed, duration, durationsApart, figure, percent, plainAmount } from './line-text.ts';

const endBasis = ownBasis('c_min = C·share left/100', 'ISO 14520-1 and NFPA 2001, 85 % (memory), or as chosen in the basis of design');

/** How long the gas stays where it is needed. */
export function holdLines(context: LineContext, enclosure: EnclosureDesign): Calculation {
  const { basis, lengths } = context;
  const draft = new Draft('hold', 'Hold time', enclosure.ref, enclosure.name);
  draft.given('Method', HOLD_MODEL_WORDS[basis.holdModel], CHOSEN);
  draft.given('Time that the gas must hold', duration(basis.holdTime_s), CHOSEN);
  draft.with('leaks', enclosure.leaks, (leaks) => leakLines(draft, context, enclosure, leaks));
  draft.with('hold time', enclosure.hold, (sums) => {
    const { volume, leaks } = enclosure;
    if (!volume.isKnown || !leaks.isKnown) return;
    const { net_m3, spaces } = volume.sums;
    draft.given('Net volume, V', amount(net_m3, 'volume', lengths), 'agent quantity');
    timeLines(draft, context, { net_m3, floor_m: Math.min(...spaces.map(({ space }) => space.floor_m)) }, leaks.sums, sums);
  });
  return draft.done();
}

function leakLines(draft: Draft, { lengths }: LineContext, { enclosure }: EnclosureDesign, { coefficient, exponent, area_m2, source, remarks }: LeakSums): void {
  const { leakage } = enclosure;
  if (leakage.kind === 'area') {
    draft.given('Leakage area', `${amount(leakage.area_m2, 'area', lengths)} at ${amount(leakage.pressure_Pa, 'pressureDifference', lengths)}`, PLAN);
    const pressure = figure(leakage.pressure_Pa);
    draft.step('Leaks at 1 Pa, k1', fanFlowBasis, `0.61·${figure(leakage.area_m2)}·√(2·${pressure}/${figure(AIR_kg_m3)})/${pressure}^${figure(exponent)}`, plainAmount(coefficient, 'm³/s'));
  } else {
    if (leakage.kind === 'door-fan') draft.given('Door-fan readings', `${leakage.readings.filter(({ direction }) => direction === 'in').length} in, ${leakage.readings.filter(({ direction }) => direction === 'out').length} out`, PLAN);
    draft.step('Leaks at 1 Pa, k1', bothDirectionsBasis, '', plainAmount(coefficient, 'm³/s'));
  }
  draft.given('Exponent of the leaks, n', figure(exponent, 4), source);
  draft.step('Leakage area at 10 Pa', leakageAreaBasis, `${figure(coefficient)}·10^${figure(exponent)}/(0.61·√(2·10/${figure(AIR_kg_m3)}))`, amount(area_m2, 'area', lengths));
  for (const remark of remarks) draft.caution(remark);
}

interface Room {
  readonly net_m3: number;
  /** Lowest face of its spaces, above the finished floor. */
  readonly floor_m: number;
}

/** The sharp interface and the wide one are the same formula with another height of gas. */
function timeLines(draft: Draft, { basis, lengths }: LineContext, { net_m3: volume_m3, floor_m }: Room, { coefficient, exponent, area_m2 }: LeakSums, sums: HoldSums): void {
  const { height_m, lowestProtected_m, concentration_pct: c, endConcentration_pct: end, mixture_kg_m3: mixture } = sums;
  // The share of agent tells its density at 20 °C.
  const agent_kg_m3 = AIR_kg_m3 + (mixture - AIR_kg_m3) / (c / 100);
  const isRising = sums.interface === 'rising';
  draft.step('Density of the agent at 20 °C, ρ_e = 1/s', nitrogenVolumeBasis, '', plainAmount(agent_kg_m3, 'kg/m³'));
  draft.step('Density of the mixture, ρ_m', mixtureDensityBasis, `${figure(agent_kg_m3)}·${figure(c)}/100 + ${figure(AIR_kg_m3)}·(100 − ${figure(c)})/100`, plainAmount(mixture, 'kg/m³'));
  draft.step('Boundary between gas and fresh air', gasInterfaceBasis, '', isRising ? 'rises from the floor' : 'sinks from the ceiling');
  draft.given('Height of the gas, H0', amount(height_m, 'length', lengths), PLAN);
  draft.given('Lowest place that must stay protected, above the finished floor', amount(lowestProtected_m, 'length', lengths), PLAN);
  draft.step('Concentration that must be left, c_min', endBasis, `${figure(c)}·${figure(basis.holdEnd_pct)}/100`, percent(end));
  draft.given('Share of the leaks through which gas leaves, F', figure(basis.leakFraction), CHOSEN);
  draft.given('Pressure of the ventilation, P_bias', amount(basis.bias_Pa, 'pressureDifference', lengths), CHOSEN);
  const room = { volume_m3, height_m, fanCoefficient: coefficient, fanExponent: exponent, lowerLeakFraction: basis.leakFraction, bias_Pa: basis.bias_Pa };
  const { k2, k3, k4 } = leakDrive(room, mixture);
  const [n, f] = [figure(exponent), figure(basis.leakFraction)];
  const resistance = `(${figure(mixture)} + ${figure(AIR_kg_m3)}·(${f}/(1 − ${f}))^(1/${n}))`;
  draft.step('Factor of the leaks, k2', partOf(leakDriveBasis, 0), `${figure(coefficient)}·(${figure(AIR_kg_m3)}/2)^${n}`, figure(k2, 5));
  draft.step('Factor of the column, k3', partOf(leakDriveBasis, 1), `2·9.80665·${figure(Math.abs(mixture - AIR_kg_m3))}/${resistance}`, figure(k3, 5));
  if (basis.bias_Pa > 0) draft.step('Factor of the ventilation, k4', partOf(leakDriveBasis, 2), `2·${figure(basis.bias_Pa)}/${resistance}`, figure(k4, 5));

  const protected_m = lowestProtected_m - floor_m;
  const left_m = gasHeightLeft_m(sums.interface, height_m, protected_m);
  const wide_m = wideInterfaceHeight_m(height_m, left_m, c, end);
  const heldTo = (gas_m: number): string => {
    const rest = figure(1 - exponent);
    const at = (h_m: number): string => (k4 > 0 ? `(${figure(k3)}·${figure(h_m)} + ${figure(k4)})^${rest}` : `(${figure(k3)}·${figure(h_m)})^${rest}`);
    return `(${figure(volume_m3)}/${figure(height_m)})·(${at(height_m)} − ${at(gas_m)})/(${rest}·${figure(k2)}·${f}·${figure(k3)})`;
  };
  const time = (label: string, model: HoldSums['model'], of: Basis, numbers: string, time_s: number): void => {
    if (model === sums.model) draft.main(label, of, numbers, `${durationsApart(time_s, sums.required_s).value}${time_s < sums.required_s * (1 - 1e-9) ? ': too short' : ''}`);
    else draft.step(label, of, numbers, duration(time_s));
  };
  const interfaceBasis = partOf(interfaceTimeBasis, 0);
  draft.step('Gas left when the boundary comes to it, H_p', gasHeightLeftBasis, isRising ? `${figure(height_m)} − ${bracketed(protected_m)}` : figure(protected_m), amount(left_m, 'length', lengths));
  time('Hold time, sharp interface: H = H_p', 'sharp', interfaceBasis, heldTo(left_m), sums.sharp_s);
  draft.step('Height of gas for a wide interface, H', wideInterfaceHeightBasis, `${figure(height_m)} − (${figure(height_m)} − ${figure(left_m)})·${figure(c)}/(2·${figure(end)})`, amount(wide_m, 'length', lengths));
  time('Hold time, wide interface', 'wide', interfaceBasis, heldTo(wide_m), sums.wide_s);
  time('Hold time, gas kept mixed', 'mixing', mixingTimeBasis, '', sums.mixing_s);
  const numbers = Number.isFinite(sums.time_s) ? `${figure(area_m2)}·${figure(sums.time_s)}/${figure(sums.required_s)}` : '';
  draft.main('Leakage area at 10 Pa that just holds', allowedLeakageBasis, numbers, amountsApart(sums.allowedLeakage_m2, area_m2, 'area', lengths).value);
}
