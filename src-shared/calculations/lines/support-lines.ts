import type { Support } from '../../model/plan.ts';
import { ATMOSPHERE_Pa, gaugeOf_Pa } from '../../units/convert.ts';
import type { NetworkDesign, SpanSums, SupportSums, ThrustSums, TurnThrustSums } from '../design/design.ts';
import { elbowThrustBasis, holeThrustBasis, nozzleThrustBasis } from '../formulas/thrust.ts';
import { NITROGEN_HEAT_RATIO, chokedPressureRatio } from '../formulas/orifice.ts';
import { nozzleSupportBasis, supportSpanBasis, turnSupportBasis } from '../formulas/support-spans.ts';
import { LAST_SUPPORT_WORDS, SUPPORT_TABLE_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { CHOSEN, Draft, type LineContext, PLAN } from './draft.ts';
import { amount, amountsApart, counted, figure } from './line-text.ts';
import { mountLines } from './mount-lines.ts';

const KINDS: Readonly<Record<Support['kind'], string>> = { rigid: 'rigid', guide: 'guide', hanger: 'hanger', sling: 'sling' };

/** Whether pipe and cylinders are held where they must be, and what pulls at their supports. */
export function supportLines(context: LineContext, network: NetworkDesign): Calculation {
  const { basis } = context;
  const draft = new Draft('supports', 'Supports, thrust and mounting', network.ref, network.name);
  draft.given('Methods', `${SUPPORT_TABLE_WORDS[basis.supportTable]}; ${LAST_SUPPORT_WORDS[basis.lastSupport]}`, CHOSEN);
  draft.with('supports', network.supports, (sums) => heldLines(draft, context, sums));
  draft.with('thrust of the nozzles', network.thrusts, (thrusts) => thrustLines(draft, context, network, thrusts));
  draft.with('thrust of the elbows', network.turnThrusts, (turns) => turnThrustLines(draft, context, turns));
  draft.with('load of the cylinders', network.mounts, (mounts) => mountLines(draft, context, network, mounts));
  return draft.done();
}

/** The longest span of each size first; the others of that size are shorter. */
function longestSpans(spans: readonly SpanSums[]): { readonly span: SpanSums; readonly count: number; readonly beyond: number }[] {
  const bySize = new Map<string, SpanSums[]>();
  for (const span of spans) {
    const { size } = span.pipe.pipe;
    bySize.set(size, [...(bySize.get(size) ?? []), span]);
  }
  return [...bySize.values()].flatMap((list) => {
    const [span] = [...list].sort((a, b) => b.length_m - a.length_m);
    return span ? [{ span, count: list.length, beyond: list.filter(({ length_m, allowed_m }) => allowed_m !== undefined && length_m > allowed_m + 1e-9).length }] : [];
  });
}

function heldLines(draft: Draft, { lengths }: LineContext, { held, spans, nozzles, turns }: SupportSums): void {
  const kinds = (Object.keys(KINDS) as Support['kind'][]).flatMap((kind) => {
    const count = held.filter(({ support }) => support.kind === kind).length;
    return count === 0 ? [] : [`${count} ${KINDS[kind]}`];
  });
  draft.given('Supports on the plan', kinds.length > 0 ? kinds.join(', ') : 'none', PLAN);
  for (const { span, count, beyond } of longestSpans(spans)) {
    const { length_m, allowed_m, pipe } = span;
    const label = `NPS ${pipe.pipe.size}: longest of ${counted(count, 'span')}`;
    if (allowed_m === undefined) draft.step(label, supportSpanBasis, '', `${amount(length_m, 'length', lengths)}; the table has none for this size`);
    else {
      const { value, limit } = amountsApart(length_m, allowed_m, 'length', lengths);
      draft.main(label, supportSpanBasis, '', `${value}; allowed ${limit}${beyond > 0 ? `: ${beyond} too long` : ''}`);
    }
  }
  for (const { name, distance_m, allowed_m, support } of nozzles) {
    const { value, limit } = amountsApart(distance_m ?? Number.NaN, allowed_m, 'length', lengths);
    const kind = support ? `, ${KINDS[support.support.kind]}` : '';
    draft.step(`Last support of nozzle ${name}`, nozzleSupportBasis, '', distance_m === undefined ? 'no support on its pipe' : `${value}${kind}; allowed ${limit}${distance_m > allowed_m + 1e-9 ? ': too far' : ''}`);
  }
  const lost = turns.filter(({ distance_m }) => distance_m === undefined).length;
  const far = turns.filter(({ distance_m, allowed_m }) => distance_m !== undefined && distance_m > allowed_m + 1e-9).length;
  const [worst] = turns.filter(({ distance_m }) => distance_m !== undefined).sort((a, b) => (b.distance_m ?? 0) - (a.distance_m ?? 0));
  if (turns.length === 0) return;
  const { value, limit } = worst?.distance_m === undefined ? { value: 'no support', limit: amount(turns[0]?.allowed_m ?? 0, 'length', lengths) } : amountsApart(worst.distance_m, worst.allowed_m, 'length', lengths);
  const faults = [...(far > 0 ? [`${far} too far`] : []), ...(lost > 0 ? [`${lost} without a support`] : [])];
  draft.step(`Farthest of ${counted(turns.length, 'elbow or tee', 'elbows and tees')}`, turnSupportBasis, '', `${value}; allowed ${limit}${faults.length > 0 ? `: ${faults.join(', ')}` : ''}`);
}

/** Pressure and area in MPa and mm², so that the force comes in newtons; empty where the hole does not choke. */
function holeNumbers({ discharge, network }: NetworkDesign, nozzle: string): string {
  if (!discharge.isKnown) return '';
  const { input, result } = discharge.sums;
  const [drawn, peak] = [input.nozzles.find(({ id }) => id === nozzle), result.nozzles.find(({ id }) => id === nozzle)];
  const holes = network.nozzles[nozzle]?.holes_rad.length ?? 0;
  const around_Pa = input.enclosures[input.spaces[drawn?.space ?? -1]?.enclosure ?? -1]?.ambient_Pa ?? ATMOSPHERE_Pa;
  if (!drawn || !peak || holes === 0 || peak.peakPressure_Pa * chokedPressureRatio(NITROGEN_HEAT_RATIO) < around_Pa) return '';
  const area = figure((drawn.area_m2 / holes) * 1e6);
  return `1.267876·${figure(peak.peakPressure_Pa / 1e6)}·${area}·${figure(drawn.dischargeCoefficient)} − ${figure(around_Pa / 1e6)}·${area}`;
}

/** The elbow that is pushed hardest: the others less. */
function turnThrustLines(draft: Draft, { lengths }: LineContext, turns: readonly TurnThrustSums[]): void {
  const [hardest] = [...turns].sort((a, b) => b.pipe_N - a.pipe_N);
  if (!hardest) return;
  const { fitting, flow_kg_s, velocity_m_s, pressure_Pa, area_m2, support_N, pipe_N } = hardest;
  const turn = figure(2 * Math.sin(fitting.turn_rad / 2));
  const flow = `${figure(flow_kg_s)}·${figure(velocity_m_s)}`;
  const of = turns.length === 1 ? 'Elbow' : `Hardest pushed of ${counted(turns.length, 'elbow')}`;
  draft.step(`${of}: pull of the flow at its support`, elbowThrustBasis, `${flow}·${turn}`, amount(support_N, 'force', lengths));
  draft.step(`${of}: with the pressure, borne by the pipe`, elbowThrustBasis, `(${figure(gaugeOf_Pa(pressure_Pa))}·${figure(area_m2)} + ${flow})·${turn}`, amount(pipe_N, 'force', lengths));
}

function thrustLines(draft: Draft, { lengths }: LineContext, network: NetworkDesign, thrusts: readonly ThrustSums[]): void {
  for (const { ref, name, hole_N } of thrusts) draft.step(`Nozzle ${name}: thrust of one hole`, holeThrustBasis, holeNumbers(network, ref.id), amount(hole_N, 'force', lengths));
  for (const { name, open_N, blocked_N, support } of thrusts) {
    const capacity_N = support?.support.capacity_N ?? null;
    const apart = capacity_N === null ? undefined : amountsApart(blocked_N, capacity_N, 'force', lengths);
    const bears = !support ? 'no support near it' : apart ? `its support bears ${apart.limit}${blocked_N > (capacity_N ?? 0) * (1 + 1e-9) ? ': too little' : ''}` : 'what its support bears is not known';
    draft.main(`Nozzle ${name}: all holes open; the worst with one blocked`, nozzleThrustBasis, '', `${amount(open_N, 'force', lengths)}; ${apart?.value ?? amount(blocked_N, 'force', lengths)}; ${bears}`);
  }
}
