import { memo, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { refKey } from '#shared/model/plan';
import type { Ref } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import { DARK_INK, type Ink } from '../ink.ts';
import type { Session } from '../store/state.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import type { ToolLook, ToolRunner } from '../tools/tool-runner.ts';
import { BoardLayer } from './board-layer.tsx';
import { drawNozzleCoverage } from './draw-coverage.ts';
import { drawCut } from './draw-cut.ts';
import { type FindingMark, drawFindingMarks, drawFindingPlace } from './draw-findings.ts';
import { drawGround } from './draw-grid.ts';
import { type LivePlace, drawCaught, drawWork, livePlaceAt, livePlaceOf } from './draw-live.ts';
import { drawHover, drawSelectedUnderlays, drawSelection } from './draw-selection.ts';
import type { Paint } from './paint.ts';
import { type Scene, isShown, levelOf, networksOf, planOf } from './scene.ts';
import { scenePaints, thingPaints } from './scene-paints.ts';
import { UnderlayRaster, type UnderlayWish } from './underlay-raster.ts';

/** Nothing to draw; one list, so that a layer that stays empty is left alone. */
const NO_PAINTS: readonly Paint[] = [];

/** More nozzles than this under the hand at once: their distances would hide each other. */
const MOST_LIVE = 2;

interface GroundProps {
  readonly scene: Scene;
  readonly drawings: UnderlayDrawings;
  readonly pixelRatio: number;
}

/** Paper, grid and the imported floor plans. */
export const GroundLayer = memo(function GroundLayer({ scene, drawings, pixelRatio }: GroundProps) {
  const version = useSyncExternalStore(drawings.subscribe, drawings.version);
  const [drawn, redraw] = useState(0);
  const kept = useRef<UnderlayRaster>(null);
  kept.current ??= new UnderlayRaster(() => redraw((count) => count + 1));
  const raster = kept.current;
  useEffect(() => () => raster.stop(), [raster]);

  const plan = planOf(scene);
  const underlays = levelOf(scene)?.underlays;
  const areShown = isShown(scene, 'underlays');
  const { assets } = plan;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the keep of drawings says by its version that it changed
  const wish = useMemo((): UnderlayWish => {
    const items = Object.values(areShown ? (underlays ?? {}) : {}).flatMap((underlay) => {
      const drawing = underlay.visible ? drawings.find(plan, underlay) : undefined;
      return drawing ? [{ underlay, drawing }] : [];
    });
    return { items, colour: scene.ink.underlay, isDark: scene.ink === DARK_INK, pixelRatio };
  }, [underlays, assets, areShown, drawings, version, scene.ink, pixelRatio]);
  const grid_m = isShown(scene, 'grid') ? plan.settings.grid_m : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a sharper picture of the floor plans is there to be painted
  const paints = useMemo(
    (): Paint[] => [(pen, shown) => drawGround(pen, shown, scene.ink, grid_m), (pen, shown) => raster.paint(pen, shown, wish)],
    [scene.ink, grid_m, raster, wish, drawn],
  );
  // Floor plans are a picture of their own, shifted by itself.
  return wish.items.length > 0 ? <BoardLayer key="board" paints={paints} beyond_px={0} /> : <BoardLayer key="beyond" paints={paints} />;
});

/** Everything of the plan that no gesture moves just now. */
export const PlanLayer = memo(function PlanLayer({ scene }: { readonly scene: Scene }) {
  const paints = useMemo(() => scenePaints(scene), [scene]);
  return <BoardLayer paints={paints} />;
});

interface MarkProps {
  readonly scene: Scene;
  readonly drawings: UnderlayDrawings;
  /** What a click would pick. */
  readonly hovered: readonly Ref[];
  readonly finding: Finding | undefined;
  readonly selection: readonly Ref[];
  readonly cut: Session['cut'];
}

/** What is selected, and what the finding that is read measured. */
export const MarkLayer = memo(function MarkLayer({ scene, drawings, hovered, finding, selection, cut }: MarkProps) {
  const paints = useMemo((): readonly Paint[] => {
    const { ink, lengths } = scene;
    const plan = planOf(scene);
    const all: Paint[] = [];
    if (cut) all.push((pen, shown) => drawCut(pen, shown, cut, ink));
    for (const ref of hovered) all.push((pen, shown) => drawHover(pen, shown, plan, ref, ink));
    if (selection.length > 0) {
      all.push(
        (pen, shown) => drawSelectedUnderlays(pen, shown, plan, drawings, selection, ink),
        (pen, shown) => drawNozzleCoverage(pen, shown, scene, selection),
        (pen, shown) => drawSelection(pen, shown, plan, selection, ink),
      );
    }
    if (finding && finding.place?.level === scene.level) all.push((pen, shown) => drawFindingPlace(pen, shown, finding, lengths, ink));
    return all.length > 0 ? all : NO_PAINTS;
  }, [scene, drawings, hovered, finding, selection, cut]);
  return <BoardLayer paints={paints} beyond_px={0} />;
});

/** What the checks say of all that no gesture touches just now. */
export const FindingLayer = memo(function FindingLayer({ marks, ink }: { readonly marks: readonly FindingMark[]; readonly ink: Ink }) {
  const paints = useMemo((): readonly Paint[] => (marks.length > 0 ? [(pen, shown) => drawFindingMarks(pen, shown, marks, ink)] : NO_PAINTS), [marks, ink]);
  return <BoardLayer paints={paints} />;
});

interface ActiveProps {
  /** The scene at rest, and what a gesture makes of it. */
  readonly rest: Scene;
  readonly scene: Scene | null;
  readonly moved: ReadonlySet<string>;
  /** Marks of what a gesture touches. */
  readonly marks: readonly FindingMark[];
  readonly runner: ToolRunner;
  readonly ink: Ink;
}

/** What a gesture moves, the sketch of the tool and what the pointer caught. */
export const ActiveLayer = memo(function ActiveLayer({ rest, scene, moved, marks, runner, ink }: ActiveProps) {
  const look = useSyncExternalStore(runner.subscribe, runner.look);
  const paints = useMemo((): readonly Paint[] => {
    const { sketch, tool } = look;
    const hasLines = (sketch.lines?.length ?? 0) > 0;
    const snap = tool !== 'select' || hasLines ? look.snap : null;
    const places = scene ? placesUnderHand(scene, moved) : placesUnderPointer(rest, look);
    const all: Paint[] = [];
    if (marks.length > 0) all.push((pen, shown) => drawFindingMarks(pen, shown, marks, ink));
    // Names come back when the hand lets go: until then the measured distances need the room.
    if (scene) all.push(...thingPaints(scene));
    if (hasLines || (sketch.labels?.length ?? 0) > 0 || snap || places.length > 0) {
      all.push((pen, shown) => {
        drawWork(pen, shown, { sketch, snap, places, lengths: rest.lengths, ink });
        if (snap) drawCaught(pen, shown, snap, ink);
      });
    }
    return all.length > 0 ? all : NO_PAINTS;
  }, [rest, scene, moved, marks, look, ink]);
  return <BoardLayer paints={paints} beyond_px={0} />;
});

/** Places of the nozzles that a gesture moves, unless there are too many to be read. */
function placesUnderHand(scene: Scene, moved: ReadonlySet<string>): LivePlace[] {
  const held = networksOf(scene).flatMap(({ nozzles }) => nozzles.filter(({ ref }) => moved.has(refKey(ref))));
  return held.length <= MOST_LIVE ? held.flatMap((nozzle) => livePlaceOf(nozzle) ?? []) : [];
}

/** The place where the nozzle tool would hang a nozzle. */
function placesUnderPointer(rest: Scene, { tool, snap }: ToolLook): LivePlace[] {
  if (tool !== 'nozzle' || !snap) return [];
  const profile = networksOf(rest)[0]?.profile ?? Object.values(planOf(rest).profiles)[0];
  const place = livePlaceAt(snap.at, rest.evaluation.derived.spaces, rest.level, profile);
  return place ? [place] : [];
}
