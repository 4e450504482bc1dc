import type { Fitting } from '../derived/derived.ts';
import { pipeZoneOf } from '../derived/pipe-zone.ts';
import { fittingSign } from '../isometric/fitting-sign.ts';
import { bearing_rad, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { formatLength } from '../units/length-text.ts';
import type { PipeStretch } from './pipe-stretches.ts';
import type { NetworkContent } from './plan-content.ts';
import { heightText, sizeText } from './sheet-text.ts';
import { RISER_RADIUS_mm, fittingSymbol, pipeLine, reducerSymbol, riserSymbol, zoneColour } from './symbols.ts';
import { type LabelLine, addLabel, addLabelWays } from './labels.ts';
import { type ViewDraft, addLine, onPaper, uprightBox } from './view-draft.ts';

/** Upright stretches that stand over one place of the plan. */
interface Upright {
  readonly x: number;
  readonly y: number;
  readonly stretches: readonly PipeStretch[];
  /** A nozzle hangs below: its own symbol stands here. */
  readonly hasNozzle: boolean;
}

function uprightsOf(content: NetworkContent): Upright[] {
  const places: { x: number; y: number; stretches: PipeStretch[] }[] = [];
  for (const stretch of content.stretches.filter(({ lie }) => lie === 'upright')) {
    const known = places.find((place) => distance_m({ ...place, z: 0 }, stretch.from) <= SAME_PLACE_m);
    if (known) known.stretches.push(stretch);
    else places.push({ x: stretch.from.x, y: stretch.from.y, stretches: [stretch] });
  }
  const isNozzle = (x: number, y: number): boolean => content.nozzles.some(({ at }) => at !== undefined && Math.hypot(at.x - x, at.y - y) <= SAME_PLACE_m);
  return places.map((place) => ({ ...place, hasNozzle: isNozzle(place.x, place.y) }));
}

const isPipe = (content: NetworkContent, id: string) => content.network.pipes.find(({ ref }) => ref.id === id);

/** Level directions in which pipes leave a fitting [rad]; uprights have none. */
function legsOf(content: NetworkContent, fitting: Fitting): number[] {
  return fitting.pipes.flatMap((id) => {
    const pipe = isPipe(content, id);
    if (!pipe) return [];
    const isStart = distance_m(pipe.from, fitting.at) + Math.abs(pipe.from.z - fitting.at.z) <= SAME_PLACE_m;
    const other = isStart ? pipe.to : pipe.from;
    return distance_m(other, fitting.at) <= SAME_PLACE_m ? [] : [bearing_rad(fitting.at, other)];
  });
}

/** Draws pipe and fittings of a network. */
export function drawPipes(view: ViewDraft, content: NetworkContent): void {
  const { frame, sizes } = view;
  const { stretches } = content;
  const zone = pipeZoneOf(content.network.network);
  const colour = zoneColour(zone);
  for (const { lie, from, to } of stretches) {
    if (lie === 'upright') continue;
    view.used.add(zone === 'high' ? 'pipe-high' : 'pipe');
    const places = onPaper(frame, [from, to]);
    addLine(view, places, pipeLine(zone, sizes.factor, ...places), 14);
  }
  for (const fitting of content.fittings) {
    const [x = 0, y = 0] = onPaper(frame, [fitting.at]);
    const legs = legsOf(content, fitting);
    if (legs.length === 0) continue;
    if (fitting.kind === 'reducer') {
      const narrow = legsOf(content, { ...fitting, pipes: fitting.pipes.slice(1) })[0];
      if (narrow === undefined) continue;
      view.used.add('reducer');
      const aside = 3.6 * sizes.factor;
      view.lines.push(reducerSymbol(x + Math.cos(narrow) * aside, y - Math.sin(narrow) * aside, narrow, colour, sizes.factor));
    } else {
      const sign = fittingSign(content.network, fitting);
      view.used.add(sign);
      view.lines.push(...fittingSymbol(x, y, sign, legs, colour, sizes.factor));
    }
  }
}

/** Draws risers and drops; a drop that ends in a nozzle is the nozzle's own symbol. */
export function drawUprights(view: ViewDraft, content: NetworkContent): void {
  const { frame, sizes, placer } = view;
  for (const upright of uprightsOf(content)) {
    if (upright.hasNozzle) continue;
    const [x = 0, y = 0] = onPaper(frame, [upright]);
    const ways = new Set(upright.stretches.map(({ way }) => way ?? 'riser'));
    for (const way of ways) {
      view.used.add(way === 'riser' ? 'rise' : 'drop');
      view.lines.push(...riserSymbol(x, y, way, sizes.factor));
    }
    const down = ways.has('drop') ? 3.6 : RISER_RADIUS_mm;
    const up = ways.has('riser') ? 3.6 : RISER_RADIUS_mm;
    placer.block(uprightBox(x, y + ((down - up) / 2) * sizes.factor, 1.6 * sizes.factor, ((down + up) / 2) * sizes.factor), ownerAt(upright));
  }
}

const ownerAt = ({ x, y }: { readonly x: number; readonly y: number }): string => `upright ${x} ${y}`;

const byHeight = (a: PipeStretch, b: PipeStretch): number => Math.min(a.from.z, a.to.z) - Math.min(b.from.z, b.to.z);

/** Writes what each riser and drop does. */
export function labelUprights(view: ViewDraft, content: NetworkContent): void {
  const { frame, lengths, sizes } = view;
  for (const upright of uprightsOf(content)) {
    if (upright.hasNozzle) continue;
    const [x = 0, y = 0] = onPaper(frame, [upright]);
    const words = [...upright.stretches].sort(byHeight).map(
      ({ size, way, from, to }): LabelLine => ({
        text: `${sizeText(size, lengths)} ${way === 'riser' ? 'up' : 'down'} ${heightText(from.z, lengths)} to ${heightText(to.z, lengths)}`,
      }),
    );
    addLabel(view, words, { x, y, clearance_mm: 2 * sizes.factor, owner: ownerAt(upright), toward_rad: Math.PI / 6 }, 'a riser or drop');
  }
}

/** Writes size, length and height beside each stretch of pipe. */
export function labelPipes(view: ViewDraft, content: NetworkContent): void {
  const { frame, lengths } = view;
  for (const stretch of content.stretches) {
    if (stretch.lie === 'upright') continue;
    const [ax = 0, ay = 0, bx = 0, by = 0] = onPaper(frame, [stretch.from, stretch.to]);
    const heights = stretch.lie === 'level' ? heightText(stretch.from.z, lengths) : `${heightText(stretch.from.z, lengths)} to ${heightText(stretch.to.z, lengths)}`;
    const short = `${sizeText(stretch.size, lengths)} · ${formatLength(stretch.length_m, lengths)}`;
    const wish = { x: (ax + bx) / 2, y: (ay + by) / 2, clearance_mm: 0.8, along: { ax, ay, bx, by } };
    // The height is written where it fits beside the pipe; risers and drops give it as well.
    const whole = { lines: [{ text: `${short} · ${heights}` }], wish };
    const ways = stretch.lie === 'level' ? [{ ...whole, wish: { ...wish, farthest_mm: 0 } }, { lines: [{ text: short }], wish }] : [whole];
    addLabelWays(view, ways, `a pipe of ${content.network.network.name}`);
  }
}
