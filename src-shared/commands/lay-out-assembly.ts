import { normalAngle_rad } from '../geometry/angle.ts';
import { dot3, mixed } from '../geometry/bent-path.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { shortestBentPath } from '../geometry/shortest-bent-path.ts';
import type { Direction3 } from '../geometry/vector3.ts';
import type { AssemblyPart, Cylinder, Network, Plan, RefOf } from '../model/plan.ts';
import { takeId } from '../model/plan.ts';
import { asItStood } from './as-it-stood.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { soundAngle_rad, soundPoint3 } from './sound-value.ts';

/** Least way along a manifold from its blind end to the first hose, and from the last one to its outlet [m]; common practice. */
const END_m = 0.05;

/** What a layout rests on. */
interface Ground {
  readonly cylinders: readonly [Cylinder, ...Cylinder[]];
  readonly source: PlanPoint3;
  readonly outlet_m: number;
  readonly bend_m: number;
}

function groundOf({ profiles }: Plan, network: Network): Ground {
  const limits = profiles[network.profile]?.limits ?? refuse('The network has no unit profile.');
  const [first, ...others] = Object.values(network.cylinders);
  return {
    cylinders: first ? [first, ...others] : refuse('No cylinder is drawn yet. Place one first.'),
    source: (network.source === null ? undefined : network.nodes[network.source]?.at) ?? refuse('Choose first where the pipe begins.'),
    outlet_m: limits.outletHeight_m?.value ?? refuse('The height of the valve outlet is blank in the unit profile.'),
    bend_m: limits.hoseBendRadius_m?.value || refuse('The least bend radius of the hose is blank in the unit profile.'),
  };
}

/** Length of rigid parts together; refuses while one is not entered. */
function rigid_m(parts: readonly AssemblyPart[]): number {
  const blank = parts.find(({ length_m, kind }) => length_m === 0 && kind !== 'manifold');
  if (blank) refuse(`Enter the length of “${blank.name}” first: where the hose ends follows from it.`);
  return parts.reduce((sum, { length_m }) => sum + length_m, 0);
}

const opposite = ({ x, y }: Direction3): Direction3 => ({ x: -x, y: -y, z: 0 });
const bearingOf = ({ x, y }: Direction3): number => normalAngle_rad(Math.atan2(y, x));
/** Along the wall behind a cylinder. */
const alongWall = ({ back_rad }: Cylinder): Direction3 => ({ x: -Math.sin(back_rad), y: Math.cos(back_rad), z: 0 });
const outletOf = ({ at }: Cylinder, outlet_m: number): PlanPoint3 => ({ x: at.x, y: at.y, z: outlet_m });

/** One cylinder: rigid parts level along the wall up to the pipe, the hose in whichever of the four ways takes least. */
function layAlone({ cylinders: [cylinder], source, outlet_m, bend_m }: Ground, length_m: number): Pick<Cylinder, 'outlet_rad' | 'hoseEnd'> {
  const along = alongWall(cylinder);
  const begin = outletOf(cylinder, outlet_m);
  const ways = [along, opposite(along)].flatMap((onward) => [opposite(onward), onward].map((out) => ({ onward, out })));
  const [best] = ways
    .map(({ onward, out }) => {
      const end = mixed(1, source, -length_m, onward);
      return { out, end, needed_m: shortestBentPath({ at: begin, way: out }, { at: end, way: onward }, bend_m)?.length_m ?? Infinity };
    })
    .sort((a, b) => a.needed_m - b.needed_m);
  if (!best) return refuse('No way for the hose was found.');
  return { outlet_rad: soundAngle_rad(bearingOf(best.out)), hoseEnd: soundPoint3(best.end) };
}

/** How far beside its outlet a hose that turns up a quarter ends: so far that its length is used up, and at least its bend radius. */
function besideOf(hose_m: number, rise_m: number, bend_m: number): number {
  const slack_m = hose_m - (bend_m * Math.PI) / 2 - Math.max(0, rise_m - bend_m);
  return bend_m + Math.max(0, slack_m);
}

interface Several {
  readonly manifold: NonNullable<Network['manifold']>;
  readonly hoses: readonly (Pick<Cylinder, 'id' | 'outlet_rad' | 'hoseEnd'>)[];
}

/**
 * Several cylinders: the manifold level along their wall at the height where the pipe begins, its outlet so far before
 * it as the parts behind are long; each hose leaves away from the pipe and turns up into the parts under the manifold.
 */
function laySeveral({ cylinders, source, outlet_m, bend_m }: Ground, hose_m: number, own_m: number, behind_m: number, listed_m: number): Several {
  const along = alongWall(cylinders[0]);
  const placeOf = ({ at }: Cylinder): number => dot3(mixed(1, outletOf({ at } as Cylinder, 0), -1, { ...source, z: 0 }), along);
  const places = cylinders.map(placeOf);
  const middle = (Math.min(...places) + Math.max(...places)) / 2;
  const onward = middle <= 0 ? along : opposite(along);
  const before = (cylinder: Cylinder): number => -placeOf(cylinder) * (middle <= 0 ? 1 : -1);
  if (cylinders.some((cylinder) => before(cylinder) < -bend_m)) refuse('The pipe begins between the cylinders. Begin it at one end of their row.');
  const rise_m = source.z - own_m - outlet_m;
  const nearest = Math.min(...cylinders.map(before));
  const row_m = Math.max(...cylinders.map(before));
  // A manifold that is listed long enough for the row is not made longer only to take up slack of the hoses.
  const most_m = Math.max(bend_m, listed_m + behind_m - END_m - row_m);
  const beside_m = Math.max(Math.min(besideOf(hose_m, rise_m, bend_m), listed_m > 0 ? most_m : Infinity), behind_m + END_m - nearest);
  const farthest_m = row_m + beside_m + END_m;
  const to = mixed(1, source, -behind_m, onward);
  const length_m = Math.max(listed_m, farthest_m - behind_m);
  const hoses = cylinders.map((cylinder) => ({
    id: cylinder.id,
    outlet_rad: soundAngle_rad(bearingOf(opposite(onward))),
    hoseEnd: soundPoint3({ ...mixed(1, source, -before(cylinder) - beside_m, onward), z: source.z - own_m }),
  }));
  return { manifold: { from: soundPoint3(mixed(1, to, -length_m, onward)), to: soundPoint3(to) }, hoses };
}

/** Where a manifold belongs in a list of parts: before the first that the manual has behind it, or else behind hose and check valves. */
function manifoldPlace(assembly: readonly AssemblyPart[], order: readonly AssemblyPart['kind'][] | null): number {
  const at = order?.indexOf('manifold') ?? -1;
  const behind = at < 0 ? ['stop-valve', 'relief-valve', 'regulator', 'adapter'] : (order ?? []).slice(at + 1);
  const index = assembly.findIndex(({ kind }) => behind.includes(kind));
  return index < 0 ? assembly.length : index;
}

/**
 * Lays the discharge assembly of a network out so that it can be built: where outlets point, hoses end and the manifold
 * runs. Several cylinders without a manifold get one in their list of parts, as long as it is drawn; a manifold without
 * a length gets that of its drawing. No length of a hose is changed: a hose that is too short is told by its check.
 * Refuses while a cylinder, the place where the pipe begins, a length of a rigid part or a figure of the manual is
 * missing, and where no hose comes first.
 */
export const layOutAssembly = command('Lay out the discharge assembly', (draft, ref: RefOf<'network'>) => {
  const plan = asItStood(draft);
  const network = networkOf(draft, ref.id);
  const before = networkOf(plan, ref.id);
  const ground = groundOf(plan, before);
  const [hose] = before.assembly;
  if (hose?.kind !== 'hose') refuse('List the hose first: the discharge assembly begins with it at the valve.');
  const split = before.assembly.findIndex(({ kind }) => kind === 'manifold');
  if (ground.cylinders.length === 1 && split < 0) {
    const [{ id }] = ground.cylinders;
    Object.assign(network.cylinders[id] ?? {}, layAlone(ground, rigid_m(before.assembly.slice(1))));
    network.manifold = null;
    return;
  }
  const place = split < 0 ? manifoldPlace(before.assembly, plan.profiles[before.profile]?.assemblyOrder ?? null) : split;
  const behind = before.assembly.slice(split < 0 ? place : split + 1);
  const own_m = rigid_m(before.assembly.slice(1, place));
  if (own_m === 0) refuse('List what stands between hose and manifold, such as the check valve: the hose ends at it.');
  const listed_m = split < 0 ? 0 : (before.assembly[split]?.length_m ?? 0);
  const { manifold, hoses } = laySeveral(ground, before.assembly[0]?.length_m ?? 0, own_m, rigid_m(behind), listed_m);
  const drawn_m = distance3_m(manifold.from, manifold.to);
  if (split < 0) network.assembly.splice(place, 0, { id: takeId(draft, 'part'), kind: 'manifold', name: 'Manifold', length_m: drawn_m, setPressure_Pa: null, arrowDownstream: true });
  else if (listed_m === 0) Object.assign(network.assembly[split] ?? {}, { length_m: drawn_m });
  network.manifold = manifold;
  for (const { id, outlet_rad, hoseEnd } of hoses) Object.assign(network.cylinders[id] ?? {}, { outlet_rad, hoseEnd });
});
