import { coverageOf } from '#shared/derived/coverage';
import type { DerivedNozzle, Space } from '#shared/derived/derived';
import { type Outline, boxesTouch } from '#shared/geometry/outline';
import { type Ref, isSameRef } from '#shared/model/plan';
import { coverageKey } from './changed-things.ts';
import { type Pen, type Px, fillRing, polyline, setLine, trace } from './pen.ts';
import { type Scene, isShown, levelOf } from './scene.ts';
import { drawCoverageEdge } from './symbols/coverage-edge.ts';
import { drawUncovered } from './symbols/uncovered-dots.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

const onScreen = (view: Viewport, rings: readonly Outline[]): Px[][] => rings.map((ring) => ring.map((p) => toScreen(view, p)));

/** Spaces of the level that are wanted, are to be protected and have nozzles, with the nozzles that serve each. */
function servedSpaces(scene: Scene, isWanted: (space: Space) => boolean): { space: Space; nozzles: readonly DerivedNozzle[] }[] {
  const { derived } = scene.evaluation;
  const level = levelOf(scene);
  const spaces = derived.spaces.filter((space) => space.level.id === level?.id && space.isProtected && isWanted(space));
  if (spaces.length === 0) return [];
  const bySpace = new Map(spaces.map(({ key }): [string, DerivedNozzle[]] => [key, []]));
  for (const { network, nozzles } of derived.networks) {
    if (network.level !== level?.id) continue;
    for (const nozzle of nozzles) if (nozzle.space) bySpace.get(nozzle.space.key)?.push(nozzle);
  }
  return spaces.flatMap((space) => {
    const nozzles = bySpace.get(space.key) ?? [];
    return nozzles.length > 0 ? [{ space, nozzles }] : [];
  });
}

/** The floor that the nozzles of each space cover, as an outline, and the floor that none does, as dots. */
export function drawCoverage(pen: Pen, view: Viewport, scene: Scene): void {
  if (!isShown(scene, 'coverage')) return;
  const seen = visibleBox(view, 10);
  for (const { space, nozzles } of servedSpaces(scene, (each) => boxesTouch(each.bounds, seen) && scene.shows(coverageKey(each)))) {
    const { uncovered } = coverageOf(space, nozzles);
    const room = onScreen(view, [space.outline, ...space.holes]);
    pen.save();
    pen.beginPath();
    for (const ring of room) trace(pen, ring, true);
    pen.clip('evenodd');
    pen.globalAlpha = space.kind === 'room' ? 0.8 : 0.45;
    drawCoverageEdge(pen, [...room, ...uncovered.flatMap(({ rings }) => onScreen(view, rings))], scene.ink.cool);
    pen.restore();
    for (const gap of uncovered) {
      const rings = onScreen(view, gap.rings);
      drawUncovered(pen, rings, {
        anchor: toScreen(view, { x: 0, y: 0 }),
        worst: toScreen(view, gap.worst),
        colour: scene.ink.verdict.stop,
        width: view.width,
        height: view.height,
      });
      setLine(pen, { colour: scene.ink.verdict.stop, width: 1.25, dash: [4, 3] });
      for (const ring of rings) polyline(pen, ring, true);
    }
  }
}

/** The floor that each selected nozzle covers by itself. */
export function drawNozzleCoverage(pen: Pen, view: Viewport, scene: Scene, selection: readonly Ref[]): void {
  const nozzles = selection.filter((ref) => ref.kind === 'nozzle');
  if (nozzles.length === 0 || !isShown(scene, 'coverage')) return;
  const { networks } = scene.evaluation.derived;
  const inThem = new Set(nozzles.flatMap((ref) => networks.find(({ ref: { id } }) => id === ref.network)?.nozzles.find((each) => isSameRef(each.ref, ref))?.space?.key ?? []));
  for (const { space, nozzles: serving } of servedSpaces(scene, ({ key }) => inThem.has(key))) {
    if (!serving.some(({ ref }) => nozzles.some((each) => isSameRef(each, ref)))) continue;
    for (const { nozzle, rings } of coverageOf(space, serving).perNozzle) {
      if (!nozzles.some((each) => isSameRef(each, nozzle))) continue;
      const area = onScreen(view, rings);
      pen.globalAlpha = 0.07;
      for (const ring of area) fillRing(pen, ring, scene.ink.selection);
      pen.globalAlpha = 1;
      setLine(pen, { colour: scene.ink.selection, width: 1.25, dash: [10, 3, 2, 3] });
      for (const ring of area) polyline(pen, ring, true);
    }
  }
}
