import type { Fitting } from '../../derived/derived.ts';
import { boughtWords } from '../../derived/fitting-words.ts';
import { boughtFittingsOf } from '../../derived/bought-fittings.ts';
import { jetsOf } from '../../derived/jets.ts';
import { assemblyRunOf } from '../../derived/assembly-run.ts';
import { bearing_rad, distance_m, midpoint, polar } from '../../geometry/point.ts';
import { SAME_PLACE_m } from '../../geometry/tolerance.ts';
import { fittingSign } from '../../isometric/fitting-sign.ts';
import type { NetworkContent } from '../../sheets/plan-content.ts';
import { heightText, sizeText } from '../../sheets/sheet-text.ts';
import { supportLieOnPlan } from '../../sheets/support-shape.ts';
import { fittingSymbol, nozzleSymbol, reducerSymbol, riserSymbol, supportSymbol } from '../../sheets/symbols.ts';
import { formatLength } from '../../units/length-text.ts';
import type { DxfEntity } from './drawing.ts';
import { type DrawingDraft, M_PER_MM, TEXT_m, addSymbol, addWords, at3, symbolLines } from './drawing-draft.ts';
import { layerName, pipeLayerName } from './layers.ts';

/** Ink that symbols are asked for in: a block has no colour of its own. */
const INK = '#000000';
/** Drawn diameter while the profile gives none [m]. */
const UNKNOWN_DIAMETER_m = 0.2;

/** Pipe, fittings, risers, supports, nozzles with their jets, cylinders and discharge assembly of a network. */
export function drawNetwork(draft: DrawingDraft, content: NetworkContent): void {
  drawPipe(draft, content);
  for (const fitting of content.fittings) drawFitting(draft, content, fitting);
  drawUprights(draft, content);
  for (const placed of content.supports) {
    const { kind, at } = placed.support;
    const lines = symbolLines(supportSymbol(0, 0, kind, supportLieOnPlan(placed, content.nozzles, content.pipes), 1));
    addSymbol(draft, 'supports', `Support ${kind}`, lines, at, 0, { name: `${kind} support`, height_m: at.z, nameOff_m: null });
  }
  drawNozzles(draft, content);
  if (content.hasCylinders) drawCylinders(draft, content);
}

function drawPipe(draft: DrawingDraft, { pipes, stretches }: NetworkContent): void {
  for (const { pipe, from, to } of pipes) {
    draft.entities.push({ kind: 'line', layer: pipeLayerName(pipe.size, draft.lengths), from: [from.x, from.y, from.z], to: [to.x, to.y, to.z] });
  }
  for (const { lie, from, to, size, length_m } of stretches) {
    if (lie === 'upright') continue;
    const heights = lie === 'level' ? heightText(from.z, draft.lengths) : `${heightText(from.z, draft.lengths)} to ${heightText(to.z, draft.lengths)}`;
    const bearing = bearing_rad(from, to);
    const turn = Math.cos(bearing) < -1e-9 || (Math.abs(Math.cos(bearing)) <= 1e-9 && bearing < 0) ? bearing + Math.PI : bearing;
    const at = polar(midpoint(from, to), turn + Math.PI / 2, TEXT_m * 0.5);
    addWords(draft, 'pipeTexts', at3(at, from.z), `${sizeText(size, draft.lengths)} ${formatLength(length_m, draft.lengths)} ${heights}`, { align: 'middle', rotation_rad: turn });
  }
}

/** Level directions in which pipes leave a fitting; uprights have none. */
function legsOf({ network }: NetworkContent, { pipes, at }: Pick<Fitting, 'pipes' | 'at'>): number[] {
  return pipes.flatMap((id) => {
    const pipe = network.pipes.find(({ ref }) => ref.id === id);
    if (!pipe) return [];
    const isStart = distance_m(pipe.from, at) + Math.abs(pipe.from.z - at.z) <= SAME_PLACE_m;
    const other = isStart ? pipe.to : pipe.from;
    return distance_m(other, at) <= SAME_PLACE_m ? [] : [bearing_rad(at, other)];
  });
}

function drawFitting(draft: DrawingDraft, content: NetworkContent, fitting: Fitting): void {
  const isReducer = fitting.kind === 'reducer';
  const legs = legsOf(content, isReducer ? { at: fitting.at, pipes: fitting.pipes.slice(1) } : fitting);
  const [turn_rad] = legs;
  if (turn_rad === undefined) return;
  const sign = fittingSign(content.network, fitting);
  const relative = legs.map((leg) => leg - turn_rad);
  const marks = isReducer ? [reducerSymbol(3.6, 0, 0, INK, 1)] : fittingSymbol(0, 0, sign, relative, INK, 1);
  const bought = boughtFittingsOf(content.network).find(({ node, kind }) => node === fitting.node && kind === fitting.kind);
  const sizes = bought ? ` ${bought.legs.map(({ size }) => sizeText(size, draft.lengths)).join(' x ')}` : '';
  const name = `${boughtWords(bought ?? { ...fitting, isReducing: false })}${sizes}`;
  addSymbol(draft, 'fittings', `Fitting ${isReducer ? 'reducer' : fitting.kind}`, symbolLines(marks), fitting.at, turn_rad, { name, height_m: fitting.at.z, nameOff_m: null });
}

/** Risers and drops; one that ends in a nozzle is the nozzle's own symbol. */
function drawUprights(draft: DrawingDraft, { stretches, nozzles }: NetworkContent): void {
  for (const { lie, way, from, to, size } of stretches) {
    if (lie !== 'upright' || nozzles.some(({ at }) => at && distance_m(at, from) <= SAME_PLACE_m)) continue;
    const name = `${sizeText(size, draft.lengths)} ${way === 'drop' ? 'down' : 'up'} ${heightText(from.z, draft.lengths)} to ${heightText(to.z, draft.lengths)}`;
    const kind = way === 'drop' ? 'drop' : 'riser';
    addSymbol(draft, 'risers', kind === 'drop' ? 'Drop' : 'Riser', symbolLines(riserSymbol(0, 0, kind, 1)), from, 0, { name, height_m: from.z, nameOff_m: null });
    addWords(draft, 'pipeTexts', at3(polar(from, kind === 'drop' ? -Math.PI / 4 : Math.PI / 4, TEXT_m * 1.6), from.z), name);
  }
}

function drawNozzles(draft: DrawingDraft, { nozzles }: NetworkContent): void {
  for (const derived of nozzles) {
    const { at, holes_rad, nozzle } = derived;
    if (!at) continue;
    for (const { from, to } of jetsOf(derived)) draft.entities.push({ kind: 'line', layer: layerName('jets'), from: at3(from, at.z), to: at3(to, at.z) });
    const turn_rad = holes_rad[0] ?? 0;
    const lines = symbolLines(nozzleSymbol(0, 0, holes_rad.map((hole) => hole - turn_rad), 1).filter((mark) => mark.kind !== 'line' || mark.stroke.width_mm < 1));
    addSymbol(draft, 'nozzles', 'Nozzle', lines, at, turn_rad, { name: nozzle.name, height_m: at.z, nameOff_m: 2.6 * M_PER_MM });
  }
}

/** A cylinder about its axis, its back to the east: true circle, rail, and the notch of its outlet. */
function cylinderLines(radius_m: number): DxfEntity[] {
  const at = (angle: number, far: number): readonly [number, number, number] => [Math.cos(angle) * far * radius_m, Math.sin(angle) * far * radius_m, 0];
  return [
    { kind: 'circle', layer: '0', at: [0, 0, 0], radius_m },
    { kind: 'line', layer: '0', from: [radius_m * 1.02, -radius_m * 1.35, 0], to: [radius_m * 1.02, radius_m * 1.35, 0] },
    { kind: 'polyline', layer: '0', places: [at(Math.PI - 0.3, 1), at(Math.PI, 0.5), at(Math.PI + 0.3, 1)], isClosed: false },
  ];
}

function drawCylinders(draft: DrawingDraft, { network }: NetworkContent): void {
  const radius_m = (network.profile?.limits.cylinderDiameter_m?.value ?? UNKNOWN_DIAMETER_m) / 2;
  for (const { at, back_rad, name } of Object.values(network.network.cylinders)) {
    addSymbol(draft, 'cylinders', 'Cylinder', cylinderLines(radius_m), at, back_rad, { name, height_m: undefined, nameOff_m: radius_m });
  }
  for (const { curve } of assemblyRunOf(network).pieces) {
    for (let i = 0; i + 1 < curve.length; i += 1) {
      const [a, b] = [curve[i], curve[i + 1]];
      if (a && b) draft.entities.push({ kind: 'line', layer: layerName('assembly'), from: [a.x, a.y, a.z], to: [b.x, b.y, b.z] });
    }
  }
}
