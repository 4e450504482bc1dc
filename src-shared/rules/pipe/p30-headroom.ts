import { type AssemblyRun, assemblyRunOf } from '../../derived/assembly-run.ts';
import { type ClashPipe, clashPipesOf } from '../../derived/clash-pipe.ts';
import type { Derived, DerivedLevel, DerivedNetwork, Space } from '../../derived/derived.ts';
import { CANE_m, type KeptOffFloor, type Overhead, cylinderStripsOf, keptOffFloor, lowOverFloor } from '../../derived/headroom.ts';
import { placeByPlace } from '../../derived/place-by-place.ts';
import { remembered } from '../../derived/remember.ts';
import type { Outline } from '../../geometry/outline.ts';
import { distance_m } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Level } from '../../model/plan.ts';
import { inches_m } from '../../units/convert.ts';
import { type Answer, type CheckContext, atLeast, defineRule, notChecked } from '../rule.ts';
import { per } from '../subjects.ts';
import { clashPipeName } from './clash-thing-name.ts';

const HEADROOM = { value: inches_m(80), source: 'IBC 1003.3' };
/** Pipe whose ends lie no farther apart on the plan stands upright [m]. */
const UPRIGHT_m = 0.02;

/** Pipe, or every part of a discharge assembly, with the floor that nobody walks on where some of it is low. */
interface Asked {
  readonly what: 'pipe' | 'assembly';
  readonly level: string;
  readonly things: readonly Overhead[];
  readonly off: KeptOffFloor | undefined;
}

const underside_m = ({ from, to, outside_m }: Overhead): number => Math.min(from.z, to.z) - outside_m / 2;
const isLow = (thing: Overhead): boolean => underside_m(thing) < HEADROOM.value - LENGTH_SLACK_m && Math.max(thing.from.z, thing.to.z) + thing.outside_m / 2 > 0;
const isUpright = ({ from, to }: ClashPipe): boolean => distance_m(from, to) <= UPRIGHT_m;

/** Upright pipe that, with what stands under it, comes down to within 27 in of the floor: a post, which people walk around. */
function postsOf(pipes: readonly ClashPipe[]): ReadonlySet<ClashPipe> {
  const upright = pipes.filter((pipe) => isLow(pipe) && isUpright(pipe));
  const posts = new Set(upright.filter((pipe) => underside_m(pipe) <= CANE_m));
  const ends = new Set<ClashPipe['from']>();
  for (const { from, to } of posts) ends.add(from).add(to);
  for (let grows = true; grows; ) {
    grows = false;
    for (const pipe of upright) {
      if (posts.has(pipe)) continue;
      const foot = pipe.from.z <= pipe.to.z ? pipe.from : pipe.to;
      if (!ends.has(foot)) continue;
      posts.add(pipe);
      ends.add(pipe.from).add(pipe.to);
      grows = true;
    }
  }
  return posts;
}

const roomsOf = remembered((level: DerivedLevel): readonly Space[] => level.spaces.filter(({ kind }) => kind === 'room'));

/** A network over the floor of its level that nobody walks on. */
interface OverFloor {
  readonly network: DerivedNetwork;
  readonly off: KeptOffFloor | undefined;
}

interface LevelStrips {
  readonly level: Level;
  readonly strips: readonly Outline[];
}

const levelStrips = remembered((strips: readonly Outline[], level: Level): LevelStrips => ({ level, strips }));
const NOWHERE: readonly Outline[] = [];

/** The cylinder strips of each network: the very same list while none of its cylinders changes. */
const stripsEach = placeByPlace((network: DerivedNetwork, levels: Derived['levels']): LevelStrips => {
  const on = levels.find(({ level }) => level === network.level);
  return levelStrips(on ? cylinderStripsOf(network, roomsOf(on)) : NOWHERE, network.level);
});

const floorsOf = remembered((around: readonly LevelStrips[], levels: Derived['levels']): ReadonlyMap<Level, KeptOffFloor> =>
  new Map(levels.map((on) => [on.level, keptOffFloor(roomsOf(on), on.solids, around.filter(({ level }) => level === on.level).map(({ strips }) => strips))])),
);

const overFloors = placeByPlace((network: DerivedNetwork, floors: ReadonlyMap<Level, KeptOffFloor>): OverFloor => ({ network, off: floors.get(network.level) }));

const networksOverFloor = ({ levels, networks }: Derived): readonly OverFloor[] => overFloors(networks, floorsOf(stripsEach(networks, levels), levels));

const highPipe = remembered((pipe: ClashPipe) => ({ subject: { what: 'pipe', level: pipe.level, things: [pipe], off: undefined } satisfies Asked, ref: pipe.ref, name: clashPipeName(pipe) }));

const lowPipe = remembered((pipe: ClashPipe, off: KeptOffFloor | undefined) => ({ subject: { what: 'pipe', level: pipe.level, things: [pipe], off } satisfies Asked, ref: pipe.ref, name: clashPipeName(pipe) }));

const partsOf = remembered(({ pieces }: AssemblyRun): readonly Overhead[] => pieces.flatMap(({ curve }) => curve.slice(1).map((to, i) => ({ from: curve[i] ?? to, to, outside_m: 0 }))));

function askedOf(network: DerivedNetwork, off: KeptOffFloor | undefined): { subject: Asked; ref: ClashPipe['ref'] | DerivedNetwork['ref']; name: string }[] {
  const pipes = clashPipesOf(network);
  const posts = postsOf(pipes);
  const parts = partsOf(assemblyRunOf(network));
  return [
    ...pipes.map((pipe) => (isLow(pipe) && !posts.has(pipe) ? lowPipe(pipe, off) : highPipe(pipe))),
    ...(parts.length > 0 ? [{ subject: { what: 'assembly' as const, level: network.level.id, things: parts, off: parts.some(isLow) ? off : undefined }, ref: network.ref, name: network.network.name }] : []),
  ];
}

function judged({ what, level, things, off }: Asked, { say }: CheckContext): Answer {
  const found = off ? things.map((thing) => ({ thing, ...lowOverFloor(thing, off, HEADROOM.value) })) : [];
  const worst = found.reduce<(typeof found)[number] | undefined>((least, each) => (each.at && each.under_m < (least?.under_m ?? Infinity) ? each : least), undefined);
  const it = what === 'pipe' ? 'It' : 'The discharge assembly';
  if (worst?.at) {
    const { value, limit } = say.against(worst.under_m, HEADROOM.value);
    return {
      ...atLeast(worst.under_m, HEADROOM, LENGTH_SLACK_m),
      text: `${it} hangs ${value} above floor where people walk; ${limit} is the least headroom on a way out. Raise it, or bring it within 4 in of a wall.`,
      place: { level, at: [worst.at], heights: [worst.thing.from, worst.thing.to] },
      cure: { kind: 'advice', text: `Raise it by ${say.length(HEADROOM.value - worst.under_m)}, or lead it over racks or cabinets or within 4 in of a wall.` },
    };
  }
  const offPlan = found.find(({ isOffPlan }) => isOffPlan)?.thing;
  if (offPlan) return notChecked(`${it === 'It' ? 'it' : 'the discharge assembly'} is lower than ${say.length(HEADROOM.value)} where no room is drawn, so it is not known who walks there.`, { level, at: [offPlan.from, offPlan.to], heights: [offPlan.from, offPlan.to] });
  const at = things.flatMap(({ from, to }) => [from, to]);
  return { kind: 'judged', isKept: true, limit: HEADROOM.value, limitSource: HEADROOM.source, text: `${it} leaves headroom wherever people walk.`, place: { level, at, heights: at } };
}

/**
 * P30: pipe and discharge assembly leave headroom where people walk.
 * Measure: underside of the pipe, with its insulation, above the finished floor, at its lowest place over floor that
 * people walk on [m]. Limit: 80 in, IBC 1003.3, memory. The parts of the assembly count as lines.
 * People do not walk over things 27 in high or higher that stand on the floor, over cylinders and in the strip along
 * their wall (as deep as they stand or 0.3 m, and a foot past them to either side), nor under pipe within 4 in of a wall
 * (IBC 1003.3.3, memory). Upright pipe that comes down to within 27 in of the floor is a post. Pipe in voids is not asked.
 * Not checked: low pipe where no room is drawn.
 */
export const p30Headroom = defineRule<Asked>({
  id: 'P30',
  title: 'Headroom on ways out',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'underside of pipe above floor where people walk ≥ 80 in (2.03 m)',
    source: 'IBC 1003.3, from memory; check the adopted code',
    caution: 'People leave in haste when the alarm sounds. Local codes may ask for more.',
  },
  subjects: per(networksOverFloor, ({ network }) => network.ref.id)(({ network, off }) => askedOf(network, off)),
  check: judged,
});
