import type { DerivedNetwork, DerivedPipe, Fitting } from '#shared/derived/derived';
import { distance_m } from '#shared/geometry/point';
import { pipeZoneOf } from '#shared/derived/pipe-zone';
import { fittingSign } from '#shared/isometric/fitting-sign';
import { refKey } from '#shared/model/plan';
import { detailAt, pipeWidth_px } from './level-of-detail.ts';
import { type Pen, type Px, gap_px, heading_rad, pieces, setLine } from './pen.ts';
import { type Scene, networksOf } from './scene.ts';
import { drawFitting } from './symbols/fitting-symbol.ts';
import { HIGH_PRESSURE_LEAST_px } from './symbols/pressure-line.ts';
import { drawUpright } from './symbols/riser-symbol.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** A pipe that runs less than this on the plan stands upright there [m]. */
const UPRIGHT_RUN_m = 0.01;

/** Whether a pipe is a point on the plan. */
export const isPoint = ({ from, to }: Pick<DerivedPipe, 'from' | 'to'>): boolean => distance_m(from, to) < UPRIGHT_RUN_m;

const nozzleNodes = new WeakMap<DerivedNetwork, ReadonlySet<string>>();

/** Nodes with a nozzle; put together once for a network. */
function nozzleNodesOf(network: DerivedNetwork): ReadonlySet<string> {
  const known = nozzleNodes.get(network);
  if (known) return known;
  const nodes = new Set(network.nozzles.map(({ nozzle }) => nozzle.node));
  nozzleNodes.set(network, nodes);
  return nodes;
}

/** Whether a pipe ends at a nozzle: the nozzle's own symbol then stands for the drop. */
export function endsAtNozzle({ pipe, network }: DerivedPipe): boolean {
  const nodes = nozzleNodesOf(network);
  return nodes.has(pipe.to) || nodes.has(pipe.from);
}

/**
 * Pipes, their risers and drops, and the fittings that follow from them: a single line of the low-pressure side, or the
 * heavy double one of the high-pressure side where no regulator stands before them.
 */
export function drawPipes(pen: Pen, view: Viewport, scene: Scene): void {
  const box = visibleBox(view, 20);
  const detail = detailAt(view.camera.scale_px_m);
  const { cool, warm, paper } = scene.ink;
  for (const network of networksOf(scene)) {
    const isHigh = pipeZoneOf(network.network) === 'high';
    const colour = isHigh ? warm : cool;
    const shown = network.pipes.filter(
      ({ ref, from, to }) =>
        Math.max(from.x, to.x) >= box.minX &&
        Math.min(from.x, to.x) <= box.maxX &&
        Math.max(from.y, to.y) >= box.minY &&
        Math.min(from.y, to.y) <= box.maxY &&
        scene.shows(refKey(ref)),
    );
    if (shown.length === 0) continue;
    for (const [width, pipes] of bySize(shown, view.camera.scale_px_m)) {
      const outer = isHigh ? Math.max(HIGH_PRESSURE_LEAST_px, width) : width;
      setLine(pen, { colour, width: outer, cap: 'round' });
      pieces(pen, joinedRuns(pipes, view));
      if (!isHigh) continue;
      setLine(pen, { colour: paper, width: Math.max(1.5, outer - 4), cap: 'round' });
      pieces(pen, joinedRuns(pipes, view));
    }
    if (detail.fittings) drawFittings(pen, view, scene, network, shown, colour);
    if (detail.symbols) {
      for (const pipe of shown) {
        if (isPoint(pipe) && !endsAtNozzle(pipe)) {
          drawUpright(pen, toScreen(view, pipe.from), pipe.to.z >= pipe.from.z ? 'riser' : 'drop', colour, paper);
        }
      }
    }
  }
}

/** A run of joined pipes is drawn with places at least this far apart [px]. */
const LEAST_RUN_px = 1;

/** The pipes as straight pieces on the screen; those too short to be seen are drawn together with what they lead to. */
function* joinedRuns(pipes: readonly DerivedPipe[], view: Viewport): Generator<[Px, Px]> {
  let begin: Px | undefined;
  let end: DerivedPipe['to'] | undefined;
  for (const pipe of pipes) {
    if (isPoint(pipe)) continue;
    const to = toScreen(view, pipe.to);
    if (!begin || pipe.from !== end) {
      if (begin && end) yield [begin, toScreen(view, end)];
      begin = toScreen(view, pipe.from);
    }
    end = pipe.to;
    if (gap_px(begin, to) < LEAST_RUN_px) continue;
    yield [begin, to];
    begin = undefined;
  }
  if (begin && end) yield [begin, toScreen(view, end)];
}

/** Pipes by the width of their line, so that each width is set once. */
function bySize(pipes: readonly DerivedPipe[], scale_px_m: number): Map<number, DerivedPipe[]> {
  const sorted = new Map<number, DerivedPipe[]>();
  for (const pipe of pipes) {
    const width = pipeWidth_px(pipe.outside_m, scale_px_m);
    const same = sorted.get(width);
    if (same) same.push(pipe);
    else sorted.set(width, [pipe]);
  }
  return sorted;
}

function drawFittings(pen: Pen, view: Viewport, scene: Scene, network: DerivedNetwork, shown: readonly DerivedPipe[], colour: string): void {
  const byId = new Map(shown.map((pipe) => [pipe.pipe.id, pipe]));
  const { paper } = scene.ink;
  for (const fitting of network.fittings) {
    const legs = legsOf(fitting, byId);
    if (legs.length === 0) continue;
    const widest = Math.max(...legs.map(({ pipe }) => pipeWidth_px(pipe.outside_m, view.camera.scale_px_m)));
    drawFitting(pen, toScreen(view, fitting.at), fitting.kind, {
      colour,
      paper,
      legs_rad: legs.filter(({ pipe }) => !isPoint(pipe)).map(({ way_rad }) => way_rad),
      pipe_px: widest,
      sign: fittingSign(network, fitting),
    });
  }
}

/** Pipes at a fitting with the direction in which each leaves it. */
function legsOf(fitting: Fitting, pipes: ReadonlyMap<string, DerivedPipe>): { pipe: DerivedPipe; way_rad: number }[] {
  return fitting.pipes.flatMap((id) => {
    const pipe = pipes.get(id);
    if (!pipe) return [];
    const startsHere = distance_m(pipe.from, fitting.at) < distance_m(pipe.to, fitting.at);
    const far = startsHere ? pipe.to : pipe.from;
    return [{ pipe, way_rad: heading_rad({ x: fitting.at.x, y: -fitting.at.y }, { x: far.x, y: -far.y }) }];
  });
}
