import { useMemo } from 'react';
import type { Space } from '#shared/derived/derived';
import type { Elevation } from '#shared/elevation/elevation';
import { isSameRef, refKey } from '#shared/model/plan';
import { elevationLayout } from '#shared/sheets/elevation-frame';
import { composeElevation } from '#shared/sheets/elevation-view';
import type { Session, State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { HeightBoard } from '../height-board/height-board.tsx';
import { useFittedView } from '../height-board/use-fitted-view.ts';
import { useHands } from '../height-board/use-hands.ts';
import type { Paint } from '../paint.ts';
import type { Px } from '../pen.ts';
import { useInk } from '../use-ink.ts';
import { drawWall } from './draw-wall.ts';
import { useRested } from './use-rested.ts';
import { type WallHandle, wallCommand, wallHandleAt, wallHandles, wallThingAt } from './wall-pick.ts';
import { WALL_SIZES, type WallView, fittedWall, paperScale, wallPlace, wallPx, zoomedWall } from './wall-view.ts';

const REACH_px = 10;
/** How far a key zooms the wall. */
const ZOOM_KEY = 1.25;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

interface WallBoardProps {
  readonly elevation: Elevation;
  readonly spaces: readonly Space[];
  readonly lengths: 'feet' | 'metric';
  readonly width: number;
  readonly height: number;
}

/** The cylinder wall itself: things are selected by a click, heights dragged and typed, the view zoomed and moved. */
export function WallBoard({ elevation, spaces, lengths, width, height }: WallBoardProps) {
  const store = useStoreItself();
  const ink = useInk();
  const selection = useStore(selectionOf);
  const hands = useHands<WallHandle>();
  const { held, over } = hands;
  const key = `${elevation.key} ${width} ${height}`;
  const fitted = useMemo(() => fittedWall(elevation, width, height, lengths), [elevation, width, height, lengths]);
  const shown = useFittedView({ key, stillKey: key, fitted, isHeld: held !== null });
  const { view, move, showAll } = shown;

  const scale = paperScale(view);
  const layout = useMemo(() => elevationLayout(elevation, scale, WALL_SIZES, lengths), [elevation, scale, lengths]);
  const drawnScale = useRested(scale, `${key} ${lengths}`);
  const composed = useMemo(() => composeElevation(elevation, spaces, drawnScale, WALL_SIZES, lengths), [elevation, spaces, drawnScale, lengths]);
  const marked = useMemo(() => {
    const like = held ?? over;
    return like ? (wallHandles(elevation).find((each) => each.kind === like.kind && each.cylinders.some(({ ref }) => like.cylinders.some((other) => isSameRef(ref, other.ref))) && (held ? true : Math.abs(each.z_m - like.z_m) < 1e-6)) ?? null) : null;
  }, [elevation, held, over]);
  const paints = useMemo(
    (): Paint[] => [(pen) => drawWall(pen, view, elevation, layout, composed, { width, height }, { ink, selection: new Set(selection.map(refKey)), handle: held?.kind === 'restraint' ? null : marked })],
    [view, elevation, layout, composed, width, height, ink, selection, marked, held],
  );

  const zoomed = (now: WallView, p: Px, factor: number): WallView => zoomedWall(now, (at) => elevationLayout(elevation, paperScale(at), WALL_SIZES, lengths), p, factor);
  const zoomBy = (factor: number): void => move((now) => zoomed(now, { x: width / 2, y: height / 2 }, factor));
  const thingAt = (p: Px) => wallThingAt(elevation, view, layout, p, REACH_px);
  const isSelected = ({ ref }: Elevation['cylinders'][number]): boolean => selection.some((each) => isSameRef(each, ref));
  const selectNext = (step: 1 | -1): void => {
    const { cylinders } = elevation;
    const at = cylinders.findIndex(isSelected);
    const next = cylinders[at < 0 ? (step > 0 ? 0 : cylinders.length - 1) : Math.min(cylinders.length - 1, Math.max(0, at + step))];
    if (next) store.session({ selection: [next.ref] });
  };
  const takeKey = (pressed: string): boolean => {
    if (pressed === 'ArrowLeft' || pressed === 'ArrowRight') selectNext(pressed === 'ArrowLeft' ? -1 : 1);
    else if (pressed === '+' || pressed === '=') zoomBy(ZOOM_KEY);
    else if (pressed === '-') zoomBy(1 / ZOOM_KEY);
    else if (pressed === 'Home') showAll();
    else return false;
    return true;
  };

  return (
    <HeightBoard<WallView, WallHandle>
      name="wall"
      label="Cylinder wall. The arrow keys select the next cylinder, a figure sets the height of its rail, plus and minus zoom, Home shows all."
      lies={`${view.x} ${view.y} ${view.scale_px_m}`}
      paints={paints}
      width={width}
      height={height}
      lengths={lengths}
      shown={shown}
      hands={hands}
      handleAt={(p) => wallHandleAt(elevation, view, layout, p, REACH_px)}
      isSame={(a, b) => a.kind === b.kind && a.z_m === b.z_m && a.from_m === b.from_m}
      selectedBy={({ cylinders }, p) => {
        const thing = thingAt(p);
        const on = cylinders.find(({ ref }) => thing && isSameRef(ref, thing)) ?? cylinders[0];
        return on ? [on.ref] : [];
      }}
      thingAt={thingAt}
      heightAt_m={(p) => wallPlace(view, layout, p).z}
      least_m={0}
      command={wallCommand}
      fieldAt={(handle) => wallPx(view, layout, { s: handle.to_m, z: handle.z_m })}
      handleOfSelected={() => wallHandles(elevation).find(({ kind, cylinders }) => kind === 'rail' && cylinders.some(isSelected))}
      figures={/^[\d.]$/}
      takeKey={takeKey}
      panned={(now, dx_px, dy_px) => ({ ...now, x: now.x + dx_px, y: now.y + dy_px })}
      zoomed={zoomed}
    />
  );
}
