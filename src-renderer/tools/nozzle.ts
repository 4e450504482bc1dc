import { addNozzle } from '#shared/commands/add-nozzle';
import { addPipeRun } from '#shared/commands/add-pipe-run';
import { type Command, sequence } from '#shared/commands/command';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import { derivePlan } from '#shared/derived/derive-plan';
import { isInsideRegion } from '#shared/geometry/inside';
import { type PlanPoint, type PlanPoint3, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Network, RefOf } from '#shared/model/plan';
import type { PipeSize } from '#shared/profile/pipe-table';
import { legalTurn_rad } from './legal-turn.ts';
import { networksOn } from './level-things.ts';
import { hasNozzle, isOpenEnd, nodesAt, pipesAt, pipesUnder } from './network-hits.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { lengthText } from './typed-place.ts';

/** Height typed for the next nozzles; null hangs each at the height that its place suggests. */
export interface NozzleState {
  readonly height_m: number | null;
  readonly pointer: PlanPoint | null;
  /** Where the last one was hung. */
  readonly hung: PlanPoint | null;
}

const start: NozzleState = { height_m: null, pointer: null, hung: null };
/** Two holes, blowing east and west. */
const HOLES_rad = [0, Math.PI];

/** Where a nozzle would hang. */
interface Spot {
  readonly network: Network | undefined;
  readonly at: PlanPoint3;
  /** Place on the pipe that its drop comes from; null where it needs none. */
  readonly from: PlanPoint3 | null;
  readonly size: PipeSize;
}

/** Height below the ceiling that the profile allows at most, else the height of pipe [m above the floor]. */
function hangingHeight_m(view: ToolView, network: Network | undefined, at: PlanPoint): number {
  const { plan, session, derived } = view;
  const profile = plan.profiles[network?.profile ?? Object.keys(plan.profiles)[0] ?? ''];
  const space = derived.spaces.find(({ level, kind, outline, holes }) => level.id === session.level && kind === 'room' && isInsideRegion(at, outline, holes));
  const ceiling_m = space?.ceilingAt_m(at);
  const drop_m = profile?.limits.nozzleToCeiling_m?.value;
  return ceiling_m === undefined || drop_m === undefined ? session.toolOptions.pipeHeight_m : ceiling_m - drop_m;
}

/** Whether the pipe that ends at an open end comes from above or below. */
function endsUpright(network: Network, node: string): boolean {
  const pipe = pipesAt(network, node)[0];
  const a = pipe && network.nodes[pipe.from]?.at;
  const b = pipe && network.nodes[pipe.to]?.at;
  return a !== undefined && b !== undefined && distance_m(a, b) <= SAME_PLACE_m;
}

/**
 * Where a nozzle hangs when a place is clicked: on an upright open end as it stands; below an open end, node or
 * pipe that runs level, on a drop; else free, to be piped later. A sentence where none can hang.
 */
function spotAt(view: ToolView, point: PlanPoint, height_m: number | null): Spot | string {
  const { plan, session } = view;
  const nodes = nodesAt(plan, session.level, point);
  const size = (network: Network, node: string): PipeSize => pipesAt(network, node)[0]?.size ?? session.toolOptions.pipeSize;
  const open = nodes.find(({ network, id }) => isOpenEnd(network, id));
  if (open) {
    const stands = endsUpright(open.network, open.id);
    const wanted_m = height_m ?? (stands ? open.at.z : Math.min(open.at.z, hangingHeight_m(view, open.network, point)));
    const isThere = Math.abs(wanted_m - open.at.z) <= SAME_PLACE_m;
    return { network: open.network, at: { ...open.at, z: isThere ? open.at.z : wanted_m }, from: isThere ? null : open.at, size: size(open.network, open.id) };
  }
  if (nodes.some(({ network, id }) => hasNozzle(network, id))) return 'There is a nozzle here already.';
  const under = [...nodes].sort((a, b) => a.at.z - b.at.z)[0] ?? pipesUnder(plan, session.level, point).sort((a, b) => a.at.z - b.at.z)[0];
  if (under) {
    const wanted_m = height_m ?? Math.min(under.at.z, hangingHeight_m(view, under.network, point));
    const pipeSize = under.kind === 'pipe' ? (under.network.pipes[under.id]?.size ?? session.toolOptions.pipeSize) : size(under.network, under.id);
    const isThere = Math.abs(wanted_m - under.at.z) <= SAME_PLACE_m;
    if (isThere && (under.kind === 'pipe' || pipesAt(under.network, under.id).length > 0)) return 'A nozzle hangs on a drop below this pipe. Type its height first.';
    return { network: under.network, at: { ...under.at, z: wanted_m }, from: isThere ? null : under.at, size: pipeSize };
  }
  const network = chosenNetwork(view);
  return { network, at: { x: point.x, y: point.y, z: height_m ?? hangingHeight_m(view, network, point) }, from: null, size: session.toolOptions.pipeSize };
}

/** The network that a free nozzle joins: the selected one, else the only one of the level. */
function chosenNetwork({ plan, session }: ToolView): Network | undefined {
  const id = session.selection.flatMap((ref) => (ref.kind === 'network' ? [ref.id] : 'network' in ref ? [ref.network] : []))[0];
  const selected = id === undefined ? undefined : plan.networks[id];
  if (selected?.level === session.level) return selected;
  const all = networksOn(plan, session.level);
  return all.length === 1 ? all[0] : undefined;
}

/** Hangs a nozzle on a spot and turns its holes to where they may blow. */
function hang(state: NozzleState, view: ToolView, point: PlanPoint): ToolStep<NozzleState> {
  const spot = spotAt(view, point, state.height_m);
  if (typeof spot === 'string') return { state, refusal: spot };
  const { level } = view.session;
  const network = spot.network?.id ?? null;
  const drop = spot.from ? [addPipeRun(network, level, [spot.from, spot.at], spot.size)] : [];
  const commands: Command[] = [...drop, addNozzle(network, spot.at, HOLES_rad, level)];
  const placed = sequence('Add nozzle', commands)(view.plan);
  if (!placed.ok) return { state, refusal: placed.reason };
  const made = placed.created.filter((ref): ref is RefOf<'nozzle'> => ref.kind === 'nozzle');
  const ref = made[0];
  const derived = ref && derivePlan(placed.next).nozzles.find((nozzle) => nozzle.ref.network === ref.network && nozzle.ref.id === ref.id);
  if (ref && derived) {
    const turn_rad = legalTurn_rad(derived);
    if (turn_rad !== derived.nozzle.rotation_rad) commands.push(turnNozzle(ref, turn_rad));
  }
  return { state: { ...state, hung: { x: spot.at.x, y: spot.at.y } }, commit: sequence('Add nozzle', commands), select: made };
}

/** Hangs nozzles at open ends of pipe, below pipe, or free. */
export const nozzleTool: Tool<NozzleState> = {
  id: 'nozzle',
  start,
  hint: ({ height_m }, view) =>
    height_m === null
      ? 'Click an open pipe end, a pipe, or a free place. A typed height sets how high its orifice hangs.'
      : `Click an open pipe end, a pipe, or a free place. The orifice hangs ${lengthText(view, height_m)} above the floor; Escape lets it follow the ceiling again.`,
  sketch({ height_m, hung }, view, pointer) {
    // That a nozzle hangs where one was just hung goes without saying.
    if (!pointer || (hung && distance_m(pointer, hung) <= SAME_PLACE_m)) return { asks: ['height'] };
    const spot = spotAt(view, pointer, height_m);
    return typeof spot === 'string'
      ? { labels: [{ at: pointer, text: spot }], asks: ['height'] }
      : { labels: [{ at: pointer, text: `${lengthText(view, spot.at.z)} high${spot.from ? `, on a drop of ${lengthText(view, Math.abs(spot.from.z - spot.at.z))}` : ''}` }], asks: ['height'] };
  },
  step(state, event, view) {
    switch (event.kind) {
      case 'cancel':
        return state.height_m === null ? { state: start, finished: true } : { state: { ...state, height_m: null } };
      case 'move':
        return { state: { ...state, pointer: event.point } };
      case 'down':
        return hang({ ...state, pointer: event.point }, view, event.point);
      case 'enter':
        return state.pointer ? hang(state, view, state.pointer) : { state };
      case 'typed':
        return event.height_m === null ? { state, refusal: 'Type how high the orifice hangs above the floor.' } : { state: { ...state, height_m: event.height_m } };
      default:
        return { state };
    }
  },
};
