import { memo, useMemo } from 'react';
import type { PlanPoint } from '#shared/geometry/point';
import { isInsideRegion } from '#shared/geometry/inside';
import { marginScaleOf } from '#shared/margins/place-margin';
import { siteOf } from '#shared/margins/site';
import { turnRangeOf } from '#shared/margins/turn-range';
import { standIn } from '#shared/margins/stand-in';
import type { RefOf } from '#shared/model/plan';
import { formatQuantity } from '#shared/units/quantity-text';
import { MARGIN_WORDS } from '../plan-words.ts';
import { useRoomToMove } from '../input/board-context.ts';
import type { Session, State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { drawMarginField, drawMarginLegend } from './draw-margins.ts';
import { drawPatch, drawPointerDial, drawTurnRange } from './draw-patch.ts';
import { BoardLayer } from './board-layer.tsx';
import type { Paint } from './paint.ts';
import { type Scene, planOf } from './scene.ts';
import { useMarginField } from './use-margin-field.ts';

const marginsOf = (state: State): Session['margins'] => state.session.margins;
const pointerOf = (state: State): PlanPoint | null => (state.session.margins.dial ? state.session.pointer : null);

interface MarginProps {
  readonly scene: Scene;
  readonly nozzle: RefOf<'nozzle'>;
}

/** Where the selected nozzle may be put: margins over the plan, its patch, and the dial at the pointer. */
export const MarginLayer = memo(function MarginLayer({ scene, nozzle }: MarginProps) {
  const margins = useStore(marginsOf);
  const pointer = useStore(pointerOf);
  const room = useRoomToMove();
  const { derived } = scene.evaluation;
  const site = useMemo(() => {
    const found = siteOf(derived, nozzle);
    return 'site' in found ? found.site : undefined;
  }, [derived, nozzle]);
  const range = useMemo(() => (margins.patch && site ? turnRangeOf(site) : null), [margins.patch, site]);
  const patch = room?.patch.isKnown ? room.patch : undefined;
  const field = useMarginField(site, margins.map, patch);
  const isStale = room !== null && room.plan !== planOf(scene);
  const paints = useMemo((): Paint[] => {
    const { ink, lengths } = scene;
    const all: Paint[] = [];
    const { map } = margins;
    if (site && map && field) {
      const { measure, most } = marginScaleOf(site, map);
      const figure = formatQuantity(most, measure, lengths);
      const title = `${site.nozzle.nozzle.name}, ${MARGIN_WORDS[map]}`;
      all.push((pen, shown) => drawMarginField(pen, shown, field, most, ink), (pen, shown) => drawMarginLegend(pen, shown, { title, least: figure, greatest: figure, most }, ink));
    }
    if (margins.patch && room) all.push((pen, shown) => drawPatch(pen, shown, room, isStale, ink));
    if (range && site) all.push((pen, shown) => drawTurnRange(pen, shown, site.at, range, ink));
    if (site && pointer) {
      const there = isInsideRegion(pointer, site.space.outline, site.space.holes) ? standIn(site, pointer) : undefined;
      all.push((pen, shown) => drawPointerDial(pen, shown, pointer, there, ink));
    }
    return all;
  }, [scene, site, range, field, margins, room, isStale, pointer]);
  return <BoardLayer paints={paints} beyond_px={0} />;
});
