import type { Release } from '../../model/plan.ts';
import { toDegrees } from '../../units/convert.ts';
import type { FillOfConduit, NetworkDesign, ReleaseSums } from '../design/design.ts';
import { GREATEST_BENDS_rad, bendsSum_rad, conduitBendsBasis } from '../formulas/conduit-bends.ts';
import { allowedFill, allowedFillBasis, conductorAreaBasis, conductorArea_m2 } from '../formulas/conduit-fill.ts';
import { endOfBatteryBasis, lumpedDropBasis, voltageDropBasis } from '../formulas/voltage-drop.ts';
import { wireResistanceBasis } from '../formulas/wire.ts';
import type { Calculation } from './calculation.ts';
import { ARITHMETIC, Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, amountsApart, counted, figure, plainAmount } from './line-text.ts';
import { limitSource } from './profile-source.ts';

const mm2 = (area_m2: number): number => area_m2 * 1e6;
const SOLENOID = { V: 'solenoidVoltage_V', A: 'solenoidCurrent_A', least: 'solenoidLeastVoltage_V', pulse: 'releasePulse_s' } as const;
const totalBasis = ownBasis('Σ I', ARITHMETIC);
const endBasis = ownBasis('U_supply − U', ARITHMETIC);

/** Whether the releasing circuit gives each device its voltage, and whether its wires go into their conduit. */
export function wiringLines(context: LineContext, network: NetworkDesign): Calculation {
  const draft = new Draft('wiring', 'Releasing circuit', network.ref, network.name);
  const { release } = network.network;
  if (release) circuitLines(draft, context, network, release);
  draft.with('voltage at the devices', network.release, (sums) => voltageLines(draft, context, network, sums));
  draft.with('fill of the conduit', network.conduit, (sums) => {
    if (release) conduitLines(draft, context, release, sums);
  });
  for (const { name, bends_rad } of release?.pulls ?? []) {
    const sum_rad = bendsSum_rad(bends_rad);
    const numbers = bends_rad.length > 0 ? bends_rad.map((bend) => figure(toDegrees(bend), 4)).join(' + ') : '0';
    draft.step(`Bends of ${name}`, conduitBendsBasis, numbers, `${figure(toDegrees(sum_rad), 5)}°${sum_rad > GREATEST_BENDS_rad + 1e-9 ? ': too many' : ''}`);
  }
  return draft.done();
}

function circuitLines(draft: Draft, { lengths }: LineContext, network: NetworkDesign, release: Release): void {
  draft.step('Panel at the end of its battery, U_supply', { ...endOfBatteryBasis, formula: '' }, '', amount(release.supply_V, 'voltage', lengths));
  draft.given('Wire', `${release.wireGauge} AWG copper, ${release.stranding}`, PLAN);
  const times = [
    ['Current that the panel gives', release.panelCurrent_A, 'current'],
    ['For how long', release.panelPulse_s, 'time'],
  ] as const;
  for (const [label, value, kind] of times) {
    if (value === null) draft.lacks(`${label.charAt(0).toLowerCase()}${label.slice(1)}`, 'it is not entered');
    else draft.given(label, amount(value, kind, lengths), PLAN);
  }
  const pulse = network.profile?.limits[SOLENOID.pulse];
  if (pulse) draft.given('The solenoid needs it for', amount(pulse.value, 'time', lengths), `unit profile: ${pulse.source}`);
}

function voltageLines(draft: Draft, context: LineContext, { ref, network }: NetworkDesign, sums: ReleaseSums): void {
  const { lengths } = context;
  const resistance = figure(sums.resistance_ohm_m);
  draft.step('Resistance of one conductor at 75 °C, R', wireResistanceBasis, '', plainAmount(sums.resistance_ohm_m, 'Ω/m'));
  const outward = [...sums.devices].sort((a, b) => a.distance_m - b.distance_m);
  for (const { name, distance_m, current_A, kind } of outward) {
    draft.given(`${name}: from the panel, current`, `${amount(distance_m, 'length', lengths)}, ${amount(current_A, 'current', lengths)}`, kind === 'solenoid' ? `plan; ${limitSource(context, ref.id, SOLENOID.A)}` : PLAN);
  }
  const stretches = outward.map(({ distance_m }, i) => {
    const from_m = outward[i - 1]?.distance_m ?? 0;
    const beyond_A = outward.slice(i).reduce((sum, { current_A }) => sum + current_A, 0);
    return `2·${figure(distance_m - from_m)}·${resistance}·${figure(beyond_A)}`;
  });
  draft.step('Voltage lost to the last device, U', voltageDropBasis, stretches.join(' + '), amount(sums.drop_V, 'voltage', lengths));
  draft.step('If every device stood at the end', lumpedDropBasis, `2·${figure(outward.at(-1)?.distance_m ?? 0)}·${resistance}·${figure(sums.total_A)}`, amount(sums.lumpedDrop_V, 'voltage', lengths));
  const given_A = network.release?.panelCurrent_A ?? undefined;
  const isShort = given_A !== undefined && sums.total_A > given_A * (1 + 1e-9);
  draft.step('Current of all devices', totalBasis, outward.map(({ current_A }) => figure(current_A)).join(' + '), `${given_A === undefined ? amount(sums.total_A, 'current', lengths) : amountsApart(sums.total_A, given_A, 'current', lengths).value}${isShort ? ': more than the panel gives' : ''}`);
  for (const { name, voltage_V, least_V } of outward) {
    const isLow = least_V !== undefined && voltage_V < least_V * (1 - 1e-9);
    const need = least_V === undefined ? ': nobody states what it needs' : `; it needs ${amount(least_V, 'voltage', lengths)}${isLow ? ': too low' : ''}`;
    draft.main(`Voltage at ${name}`, endBasis, '', `${amount(voltage_V, 'voltage', lengths)}${need}`);
  }
}

function conduitLines(draft: Draft, { lengths }: LineContext, { conduit, conductors }: Release, { area_m2, allowed_m2, conductors: count }: FillOfConduit): void {
  if (!conduit) return;
  draft.given('Conduit', `${conduit.kind} trade size ${conduit.size}`, PLAN);
  const each = conductors.map(({ type, wireGauge, count: number }) => ({ number, name: `${type} ${wireGauge} AWG`, area_m2: conductorArea_m2(type, wireGauge) }));
  draft.given('Conductors', each.map(({ number, name }) => `${number} × ${name}`).join(', '), PLAN);
  draft.step('Area of the conductors', conductorAreaBasis, each.map((one) => `${one.number}·${figure(mm2(one.area_m2))}`).join(' + '), amount(area_m2, 'orificeArea', lengths));
  const share = allowedFill(count);
  draft.main(`Area that ${counted(count, 'conductor')} may take`, allowedFillBasis, `${figure(share)}·${figure(mm2(allowed_m2 / share))}`, `${amount(allowed_m2, 'orificeArea', lengths)}${area_m2 > allowed_m2 * (1 + 1e-9) ? ': the conduit is too full' : ''}`);
}
