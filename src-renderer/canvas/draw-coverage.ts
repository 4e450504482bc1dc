import { coverageOf } from '#shared/derived/coverage';
import type { DerivedNozzle, Space } from '#shared/derived/derived';
import type { Outline } from '#shared/geometry/outline';
import { coverageKey, isSameNozzle } from './changed-things.ts';
import { type Pen, setLine, polyline } from './pen.ts';
import { type Scene, isShown, levelOf } from './scene.ts';
import { drawCoverageEdge } from './symbols/coverage-edge.ts';
import { drawUncovered } from './symbols/uncovered-dots.ts';
import { type Viewport, toScreen } from './viewport.ts';

type Coverage = ReturnType<typeof coverageOf>;
const kept = new WeakMap<Space, { readonly nozzles: readonly DerivedNozzle[]; readonly coverage: Coverage }>();

/** What the nozzles of a space cover; worked out once while neither the space nor its nozzles change. */
export function keptCoverage(space: Space, nozzles: readonly DerivedNozzle[]): Coverage {
  const last = kept.get(space);
  if (last && last.nozzles.length === nozzles.length && last.nozzles.every((nozzle, i) => nozzle === nozzles[i] || isSameNozzle(nozzle, nozzles[i] ?? nozzle))) return last.coverage;
  const coverage = coverageOf(space, [...nozzles]);
  kept.set(space, { nozzles, coverage });
  return coverage;
}

/** Spaces of the level that have nozzles or are to be protected, with the nozzles that serve each. */
export function servedSpaces(scene: Scene): { space: Space; nozzles: readonly DerivedNozzle[] }[] {
  const { derived } = scene.evaluation;
  const level = levelOf(scene);
  const bySpace = new Map<string, DerivedNozzle[]>();
  for (const nozzle of derived.nozzles) {
    if (!nozzle.space) continue;
    const known = bySpace.get(nozzle.space.key);
    if (known) known.push(nozzle);
    else bySpace.set(nozzle.space.key, [nozzle]);
  }
  return derived.spaces.filter((space) => space.level.id === level?.id && space.isProtected).map((space) => ({ space, nozzles: bySpace.get(space.key) ?? [] }));
}

/** What each nozzle covers, and the floor that none does. */
export function drawCoverage(pen: Pen, view: Viewport, scene: Scene): void {
  if (!isShown(scene, 'coverage')) return;
  for (const { space, nozzles } of servedSpaces(scene)) {
    if (nozzles.length === 0 || !scene.shows(coverageKey(space))) continue;
    const coverage = keptCoverage(space, nozzles);
    const onScreen = (rings: readonly Outline[]) => rings.map((ring) => ring.map((p) => toScreen(view, p)));
    pen.globalAlpha = space.kind === 'room' ? 0.75 : 0.45;
    for (const { rings } of coverage.perNozzle) drawCoverageEdge(pen, onScreen(rings), scene.ink.cool);
    pen.globalAlpha = 1;
    for (const gap of coverage.uncovered) {
      const rings = onScreen(gap.rings);
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
