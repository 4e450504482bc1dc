import { liveClearance_m, liveClearanceBasis } from '../../calculations/formulas/live-clearance.ts';
import type { DerivedNetwork, Solid } from '../../derived/derived.ts';
import { type SystemPart, gapTo_m, nearestPart, systemPartsOf } from '../../derived/live-gap.ts';
import { nearestPlaces } from '../../derived/nearest-place.ts';
import { bringsNoStop, movedTo } from '../../derived/nozzle-changes.ts';
import { bearing_rad, distance_m, planPoint, polar } from '../../geometry/point.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../../geometry/tolerance.ts';
import type { Cure, FindingInput } from '../finding.ts';
import { moveWords } from '../move-words.ts';
import { type CheckContext, atLeast, defineRule, notChecked } from '../rule.ts';
import { perNetworkOnLevel } from '../subjects.ts';

/** A live part with the network that comes near it. */
interface Asked {
  readonly live: Solid;
  readonly network: DerivedNetwork;
}

/** A nozzle is moved no farther than this [m]; beyond, its place is another one. */
const FARTHEST_m = 1.5;

/** Moves a nozzle with its drop straight away from the live part, when that is what comes nearest and brings no new stop. */
function moveAway(part: SystemPart, { live, network }: Asked, limit_m: number, say: CheckContext['say']): Cure | undefined {
  const { nozzle } = part;
  if (!nozzle?.at || !nozzle.space) return undefined;
  const { onAxis, onSolid } = nearestPlaces({ a: part.from, b: part.to }, live);
  if (distance_m(onSolid, onAxis) <= SAME_PLACE_m || distance_m(part.from, part.to) > SAME_PLACE_m) return undefined;
  const away_rad = bearing_rad(onSolid, onAxis);
  const short_m = limit_m - gapTo_m(part, live);
  const serving = network.nozzles.filter(({ space }) => space?.key === nozzle.space?.key);
  for (let by_m = short_m; by_m <= FARTHEST_m; by_m += Math.max(short_m, 0.01)) {
    const { x, y } = polar(nozzle.at, away_rad, by_m);
    const to = { x, y, z: nozzle.at.z };
    const shift = ({ x: px, y: py, z }: SystemPart['from']) => ({ x: px + Math.cos(away_rad) * by_m, y: py + Math.sin(away_rad) * by_m, z });
    if (gapTo_m({ ...part, from: shift(part.from), to: shift(part.to) }, live) < limit_m - LENGTH_SLACK_m) continue;
    if (!bringsNoStop(nozzle, movedTo(nozzle, to), serving)) return undefined;
    return { kind: 'move-nozzle', text: `Move ${nozzle.nozzle.name} ${moveWords(nozzle.at, to, say)}`, nozzle: { network: nozzle.ref.network, id: nozzle.ref.id }, to };
  }
  return undefined;
}

/**
 * N19: pipe, nozzles, cylinders and the discharge assembly keep their distance from live parts that can be touched.
 * Measure: gap in space from the outside of the nearest part to the live part [m].
 * Limit: clearance by voltage: 7 in to 13.8 kV, then by table; between two rows the larger.
 * One finding for each live part and network of its level. An electrical panel is enclosed and no live part.
 * Not checked: the voltage is not known, or is above the table.
 */
export const n19LiveParts = defineRule<Asked>({
  id: 'N19',
  title: 'Live parts',
  severity: 'stop',
  measure: 'length',
  basis: { ...liveClearanceBasis, formula: `gap in space, outside of any part of the system to live part ≥ ${liveClearanceBasis.formula}` },
  subjects: perNetworkOnLevel((network, { solids }) =>
    network.pipes.length + network.nozzles.length + Object.keys(network.network.cylinders).length === 0
      ? []
      : solids.filter(({ obstruction }) => obstruction.kind === 'live-part').map((live) => ({ subject: { live, network }, ref: live.ref, name: `${live.obstruction.name} and ${network.network.name}` })),
  ),
  check(asked, { say }) {
    const { live, network } = asked;
    const { voltage_V, name } = live.obstruction;
    const level = network.level.id;
    const near = nearestPart(systemPartsOf(network), live);
    if (!near) return notChecked('nothing of the network is drawn.', { level, at: live.footprint });
    const { part, gap_m } = near;
    const { onAxis, onSolid } = nearestPlaces({ a: part.from, b: part.to }, live);
    const [a, b] = [planPoint(onAxis.x, onAxis.y), planPoint(onSolid.x, onSolid.y)];
    const place = { level, at: [a, b], dimension: { a, b }, areas: [[live.footprint]], heights: [onAxis, onSolid] };
    if (voltage_V === null) return notChecked(`the voltage of ${name} is not known.`, place);
    const limit_m = liveClearance_m(voltage_V);
    if (limit_m === undefined) return notChecked(`the voltage of ${name} is above the table of clearances. Ask the electrical engineer.`, place);
    const figures = atLeast(gap_m, { value: limit_m, source: liveClearanceBasis.source }, LENGTH_SLACK_m);
    const { value: gap, limit: wanted } = say.against(Math.max(0, gap_m), limit_m);
    const inputs: FindingInput[] = [
      { label: 'Voltage to earth', value: say.quantity(voltage_V, 'voltage') },
      { label: 'Nearest part', value: part.name },
    ];
    const touches = gap_m <= LENGTH_SLACK_m;
    return {
      ...figures,
      text: figures.isKept
        ? `Keeps ${gap} from ${part.name}; ${wanted} is enough.`
        : `${touches ? 'Is touched by' : `Is only ${gap} from`} ${part.name}; ${wanted} is wanted. Move it away before anything is put up.`,
      inputs,
      place,
      cure: figures.isKept
        ? undefined
        : (moveAway(part, asked, limit_m, say) ?? { kind: 'advice', text: `Lead ${part.name} ${say.off(-figures.margin)} farther away from ${name}, or have it enclosed by an electrician.` }),
    };
  },
});
