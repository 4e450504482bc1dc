import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva';
import type { Space } from '#shared/derived/derived';
import type { Elevation } from '#shared/elevation/elevation';
import { isSameRef, refKey } from '#shared/model/plan';
import { elevationLayout } from '#shared/sheets/elevation-frame';
import { composeElevation } from '#shared/sheets/elevation-view';
import { wheelFactor } from '../../input/camera-input.ts';
import { makeFrameQueue } from '../../input/frame-queue.ts';
import { PointerField } from '../../input/pointer-field.tsx';
import { isForControl } from '../../input/tool-keys.ts';
import type { Session, State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import type { Paint } from '../paint.ts';
import { PaintedLayer } from '../painted-layer.tsx';
import type { Px } from '../pen.ts';
import { handyHeight_m } from '../section-pick.ts';
import { useDevicePixels } from '../use-device-pixels.ts';
import { useInk } from '../use-ink.ts';
import { drawWall } from './draw-wall.ts';
import { useRested } from './use-rested.ts';
import { type WallHandle, wallCommand, wallHandleAt, wallHandles, wallThingAt } from './wall-pick.ts';
import { WALL_SIZES, type WallView, fittedWall, paperScale, wallPlace, wallPx, zoomedWall } from './wall-view.ts';

const REACH_px = 10;
/** A press becomes a drag after so far [px]. */
const SLACK_px = 3;
/** How far a key moves or zooms the wall. */
const ZOOM_KEY = 1.25;
const HEIGHT_ONLY = ['height'] as const;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

type Hold =
  | { readonly kind: 'height'; readonly handle: WallHandle; readonly from: Px; readonly isDragging: boolean }
  | { readonly kind: 'pan'; readonly last: Px };

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
  const pixelRatio = useDevicePixels();
  const selection = useStore(selectionOf);
  const element = useRef<HTMLDivElement>(null);
  const [hold, become] = useState<Hold | null>(null);
  const [over, hover] = useState<WallHandle | null>(null);
  const [typing, type] = useState<{ readonly begins: string; readonly handle: WallHandle; readonly at: Px } | null>(null);
  const { view, move, showAll } = useWallView(elevation, width, height, lengths, hold?.kind === 'height');
  const frames = useRef(makeFrameQueue());
  useEffect(() => () => frames.current.stop(), []);

  const scale = paperScale(view);
  const layout = useMemo(() => elevationLayout(elevation, scale, WALL_SIZES, lengths), [elevation, scale, lengths]);
  const drawnScale = useRested(scale, `${elevation.key} ${width} ${height} ${lengths}`);
  const composed = useMemo(() => composeElevation(elevation, spaces, drawnScale, WALL_SIZES, lengths), [elevation, spaces, drawnScale, lengths]);
  const held = hold?.kind === 'height' ? hold.handle : null;
  const marked = useMemo(() => {
    const key = held ?? over;
    return key ? (wallHandles(elevation).find((each) => each.kind === key.kind && each.cylinders.some(({ ref }) => key.cylinders.some((other) => isSameRef(ref, other.ref))) && (held ? true : Math.abs(each.z_m - key.z_m) < 1e-6)) ?? null) : null;
  }, [elevation, held, over]);
  const paints = useMemo(
    (): Paint[] => [(pen) => drawWall(pen, view, elevation, layout, composed, { width, height }, { ink, selection: new Set(selection.map(refKey)), handle: held?.kind === 'restraint' ? null : marked })],
    [view, elevation, layout, composed, width, height, ink, selection, marked, held],
  );
  const stage = useMemo(() => ({ camera: { at: { x: 0, y: 0 }, scale_px_m: 1 }, width, height }), [width, height]);

  const placeOf = (event: { readonly clientX: number; readonly clientY: number }): Px => {
    const box = element.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };
  const zoom = useCallback(
    (p: Px, factor: number): void => move((now) => zoomedWall(now, (at) => elevationLayout(elevation, paperScale(at), WALL_SIZES, lengths), p, factor)),
    [move, elevation, lengths],
  );

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const box = target.getBoundingClientRect();
      if (event.shiftKey) move((now) => ({ ...now, x: now.x - (event.deltaX || event.deltaY) }));
      else zoom({ x: event.clientX - box.left, y: event.clientY - box.top }, wheelFactor(event));
    };
    target.addEventListener('wheel', onWheel, { passive: false });
    return () => target.removeEventListener('wheel', onWheel);
  }, [move, zoom]);

  const press = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeOf(event);
    event.currentTarget.focus({ preventScroll: true });
    if (event.button === 2) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const handle = event.button === 0 ? wallHandleAt(elevation, view, layout, p, REACH_px) : undefined;
    const thing = event.button === 0 ? wallThingAt(elevation, view, layout, p, REACH_px) : undefined;
    const first = handle?.cylinders[0]?.ref;
    const on = handle?.cylinders.find(({ ref }) => thing && isSameRef(ref, thing))?.ref ?? first;
    if (handle && on) {
      store.session({ selection: [on] });
      become({ kind: 'height', handle, from: p, isDragging: false });
      return;
    }
    if (thing) store.session({ selection: [thing] });
    become({ kind: 'pan', last: p });
  };

  const draggedTo = ({ handle, from }: Extract<Hold, { kind: 'height' }>, p: Px, fine: boolean): number =>
    Math.max(0, handyHeight_m(handle.z_m + wallPlace(view, layout, p).z - wallPlace(view, layout, from).z, lengths, fine));

  const drag = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeOf(event);
    if (!hold) {
      const handle = wallHandleAt(elevation, view, layout, p, REACH_px) ?? null;
      if (handle?.kind !== over?.kind || handle?.z_m !== over?.z_m || handle?.from_m !== over?.from_m) hover(handle);
      return;
    }
    if (hold.kind === 'pan') {
      move((now) => ({ ...now, x: now.x + p.x - hold.last.x, y: now.y + p.y - hold.last.y }));
      become({ kind: 'pan', last: p });
      return;
    }
    if (!hold.isDragging && Math.abs(p.y - hold.from.y) < SLACK_px) return;
    if (!hold.isDragging) become({ ...hold, isDragging: true });
    const z_m = draggedTo(hold, p, event.altKey);
    frames.current.next(() => store.preview(wallCommand(hold.handle, z_m)));
  };

  const release = (event: React.PointerEvent<HTMLDivElement>): void => {
    if (hold?.kind === 'height' && hold.isDragging) {
      frames.current.stop();
      store.commit(wallCommand(hold.handle, draggedTo(hold, placeOf(event), event.altKey)));
    }
    become(null);
  };
  const drop = useCallback((): void => {
    frames.current.stop();
    store.preview(null);
    become(null);
  }, [store]);

  const askFor = (begins: string, handle: WallHandle): void => type({ begins, handle, at: wallPx(view, layout, { s: handle.to_m, z: handle.z_m }) });
  /** The rail of the selected cylinder, whose height is typed. */
  const railOfSelected = (): WallHandle | undefined => wallHandles(elevation).find(({ kind, cylinders }) => kind === 'rail' && cylinders.some(({ ref }) => selection.some((each) => isSameRef(each, ref))));

  const onKey = (event: React.KeyboardEvent<HTMLDivElement>): void => {
    if (isForControl(event.target, event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    if (takeKey(event.key)) {
      event.preventDefault();
      event.stopPropagation();
    }
  };
  const takeKey = (key: string): boolean => {
    if (key === 'Escape' && hold) drop();
    else if (key === 'ArrowLeft' || key === 'ArrowRight') selectNext(key === 'ArrowLeft' ? -1 : 1);
    else if (key === '+' || key === '=') zoom({ x: width / 2, y: height / 2 }, ZOOM_KEY);
    else if (key === '-') zoom({ x: width / 2, y: height / 2 }, 1 / ZOOM_KEY);
    else if (key === 'Home') showAll();
    else {
      const begins = /^[\d.]$/.test(key) ? key : key === 'Enter' ? '' : null;
      const rail = begins === null ? undefined : railOfSelected();
      if (begins === null || !rail) return false;
      askFor(begins, rail);
    }
    return true;
  };
  const selectNext = (step: 1 | -1): void => {
    const { cylinders } = elevation;
    const at = cylinders.findIndex(({ ref }) => selection.some((each) => isSameRef(each, ref)));
    const next = cylinders[at < 0 ? (step > 0 ? 0 : cylinders.length - 1) : Math.min(cylinders.length - 1, Math.max(0, at + step))];
    if (next) store.session({ selection: [next.ref] });
  };
  const closeField = useCallback(() => {
    type(null);
    element.current?.focus({ preventScroll: true });
  }, []);

  return (
    <div
      ref={element}
      className={`wall-board ${over || held ? 'is-height' : ''}`}
      role="application"
      aria-label="Cylinder wall. The arrow keys select the next cylinder, a figure sets the height of its rail, plus and minus zoom, Home shows all."
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing board takes the keys of its tools
      tabIndex={0}
      data-wall={`${view.x} ${view.y} ${view.scale_px_m}`}
      onPointerDown={press}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={drop}
      onPointerLeave={() => hover(null)}
      onDoubleClick={(event) => {
        const handle = wallHandleAt(elevation, view, layout, placeOf(event), REACH_px);
        if (handle) askFor('', handle);
        else showAll();
      }}
      onKeyDown={onKey}
    >
      <Stage key={pixelRatio} width={width} height={height} listening={false}>
        <PaintedLayer paints={paints} view={stage} />
      </Stage>
      {typing ? (
        <PointerField
          asks={HEIGHT_ONLY}
          begins={typing.begins}
          at={typing.at}
          board={{ width, height }}
          lengths={lengths}
          accept={({ height_m }) => {
            closeField();
            if (height_m !== null) store.commit(wallCommand(typing.handle, height_m));
          }}
          close={closeField}
        />
      ) : null}
    </div>
  );
}

interface ShownWall {
  readonly view: WallView;
  move(change: (view: WallView) => WallView): void;
  showAll(): void;
}

/** The board's view: fits the wall until the user moves it, and anew for another wall or size; it holds still under a drag. */
function useWallView(elevation: Elevation, width: number, height: number, lengths: 'feet' | 'metric', isHeld: boolean): ShownWall {
  const key = `${elevation.key} ${width} ${height}`;
  const [moved, setMoved] = useState<{ readonly key: string; readonly view: WallView } | null>(null);
  const last = useRef<{ readonly key: string; readonly view: WallView } | null>(null);
  const fitted = useMemo(() => fittedWall(elevation, width, height, lengths), [elevation, width, height, lengths]);
  const kept = isHeld && last.current?.key === key ? last.current.view : undefined;
  const view = kept ?? (moved?.key === key ? moved.view : fitted);
  useLayoutEffect(() => {
    last.current = { key, view };
  }, [key, view]);
  const move = useCallback((change: (now: WallView) => WallView) => setMoved((before) => ({ key, view: change(before?.key === key ? before.view : (last.current?.view ?? fitted)) })), [key, fitted]);
  const showAll = useCallback(() => setMoved(null), []);
  return { view, move, showAll };
}
