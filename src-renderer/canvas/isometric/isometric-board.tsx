import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva';
import { type Ref, refKey } from '#shared/model/plan';
import { listenToCamera } from '../../input/camera-input.ts';
import { placeIn } from '../../input/place-in.ts';
import { isForControl } from '../../input/tool-keys.ts';
import type { Camera, Session, State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { whenLettersReady } from '../lettering.ts';
import type { Paint } from '../paint.ts';
import { PaintedLayer } from '../painted-layer.tsx';
import { type Px, gap_px } from '../pen.ts';
import { useDevicePixels } from '../use-device-pixels.ts';
import { useInk } from '../use-ink.ts';
import { type Viewport, pannedBy, zoomedAt } from '../viewport.ts';
import { drawIsometric, drawIsometricMarks } from './draw-isometric.ts';
import { fittedIsometric } from './isometric-camera.ts';
import { drawIsometricLabels, forgetIsometricLabels } from './isometric-labels.ts';
import { isometricRefsAt, selectionAfter } from './isometric-pick.ts';
import { marksOf, placedAssembly } from './isometric-things.ts';
import type { ShownIsometric } from './keep-isometric.ts';

/** How near the pointer picks, and after which way a press becomes a drag [px]. */
const REACH_px = 9;
const SLACK_px = 3;
/** How far an arrow key moves the drawing [px], and how much + and − zoom. */
const PAN_px = 40;
const ZOOM = 1.25;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [PAN_px, 0], ArrowRight: [-PAN_px, 0], ArrowUp: [0, PAN_px], ArrowDown: [0, -PAN_px] };

const selectionOf = (state: State): Session['selection'] => state.session.selection;
const pointedOf = (state: State): readonly Ref[] => state.session.pointed;
const NOTHING: readonly Ref[] = [];

interface IsometricBoardProps {
  readonly shown: ShownIsometric;
  readonly lengths: 'feet' | 'metric';
  readonly width: number;
  readonly height: number;
  /** Searches the clearest drawing anew. */
  searchAnew(): void;
}

/** One network as an isometric: zoomed, moved, and picked from. */
export function IsometricBoard({ shown, lengths, width, height, searchAnew }: IsometricBoardProps) {
  const store = useStoreItself();
  const ink = useInk();
  const pixelRatio = useDevicePixels();
  const selection = useStore(selectionOf);
  const pointed = useStore(pointedOf);
  const element = useRef<HTMLDivElement>(null);
  const [letters, lettersCame] = useState(0);
  const [isMoving, moving] = useState(false);
  const hold = useRef<{ readonly from: Px; last: Px; isDragging: boolean } | null>(null);
  const { view, become, showAll } = useIsometricCamera(shown, width, height);
  const latest = useRef({ view, shown });
  useLayoutEffect(() => {
    latest.current = { view, shown };
  }, [view, shown]);
  useEffect(
    () =>
      whenLettersReady(() => {
        forgetIsometricLabels();
        lettersCame((count) => count + 1);
      }),
    [],
  );
  useEffect(() => {
    const target = element.current;
    return target ? listenToCamera(target, { view: () => latest.current.view, become, moving }, () => false) : undefined;
  }, [become]);
  useEffect(() => () => store.session({ pointed: NOTHING }), [store]);

  const paints = useMemo(
    (): Paint[] => [
      (pen, at) => drawIsometricMarks(pen, at, shown, marksOf(shown.iso, selection), ink, false),
      (pen, at) => drawIsometricMarks(pen, at, shown, marksOf(shown.iso, pointed), ink, true),
      (pen, at) => drawIsometric(pen, at, shown, ink),
      (pen, at) => drawIsometricLabels(pen, at, shown, lengths, ink),
    ],
    [shown, selection, pointed, ink, lengths],
  );

  const refsAt = (p: Px): readonly Ref[] => isometricRefsAt(view, shown, placedAssembly(view, shown), p, REACH_px);
  const point = (refs: readonly Ref[]): void => {
    const keys = (list: readonly Ref[]): string => list.map(refKey).join(' ');
    if (keys(store.get().session.pointed) !== keys(refs)) store.session({ pointed: refs });
  };

  const press = (event: React.PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0 || event.pointerType === 'touch') return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const p = placeIn(event.currentTarget, event);
    hold.current = { from: p, last: p, isDragging: false };
  };
  const drag = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeIn(event.currentTarget, event);
    const held = hold.current;
    if (!held) {
      if (event.pointerType !== 'touch') point(refsAt(p));
      return;
    }
    if (!held.isDragging && gap_px(p, held.from) < SLACK_px) return;
    if (!held.isDragging) moving(true);
    const { last } = held;
    hold.current = { ...held, last: p, isDragging: true };
    become(pannedBy(latest.current.view, p.x - last.x, p.y - last.y));
  };
  const release = (event: React.PointerEvent<HTMLDivElement>): void => {
    const held = hold.current;
    hold.current = null;
    moving(false);
    if (!held || held.isDragging) return;
    store.session((session) => ({ selection: selectionAfter(session.selection, refsAt(placeIn(event.currentTarget, event)), event.shiftKey), tool: 'select' }));
  };
  const onKey = (event: React.KeyboardEvent<HTMLDivElement>): void => {
    if (isForControl(event.target, event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    const middle = { x: width / 2, y: height / 2 };
    const way = ARROWS[event.key];
    if (way) become(pannedBy(view, ...way));
    else if (event.key === '+' || event.key === '=') become(zoomedAt(view, middle, ZOOM));
    else if (event.key === '-') become(zoomedAt(view, middle, 1 / ZOOM));
    else if (event.key === '0') showAll();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const { network } = shown.iso.network;
  return (
    <>
      <div
        ref={element}
        className={`isometric-board ${isMoving ? 'is-moving' : pointed.length > 0 ? 'is-pointing' : ''}`}
        role="application"
        aria-label={`Isometric of ${network.name}, not to scale, seen from the ${shown.iso.view}. Plus and minus zoom, arrows move, 0 shows all.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing takes the keys that move it
        tabIndex={0}
        data-camera={`${view.camera.at.x} ${view.camera.at.y} ${view.camera.scale_px_m}`}
        data-network={network.id}
        onPointerDown={press}
        onPointerMove={drag}
        onPointerUp={release}
        onPointerCancel={() => {
          hold.current = null;
          moving(false);
        }}
        onPointerLeave={() => point(NOTHING)}
        onDoubleClick={(event) => refsAt(placeIn(event.currentTarget, event)).length === 0 && showAll()}
        onKeyDown={onKey}
      >
        <Stage key={`${pixelRatio}/${letters}`} width={width} height={height} listening={false}>
          <PaintedLayer paints={paints} view={view} />
        </Stage>
      </div>
      <IsometricKey iso={shown.iso} />
      <div className="isometric-buttons">
        <button type="button" className="button is-slim" onClick={showAll}>
          Show all
        </button>
        <button
          type="button"
          className="button is-slim"
          title="Search the direction and the lengths in which the pipes are told apart most easily"
          onClick={() => {
            searchAnew();
            showAll();
          }}
        >
          Arrange anew
        </button>
      </div>
    </>
  );
}

/** Which way north runs, what the two kinds of line mean, and that nothing is to scale. */
function IsometricKey({ iso }: { readonly iso: ShownIsometric['iso'] }) {
  const turn_deg = 90 - (iso.north_rad * 180) / Math.PI;
  return (
    <div className="isometric-key">
      <svg viewBox="-16 -16 32 32" width="32" height="32" aria-hidden="true">
        <g transform={`rotate(${turn_deg})`}>
          <path d="M0 13V-8M0 -14L4 -5H-4Z" />
        </g>
      </svg>
      <p>
        plan north · seen from the {iso.view} · not to scale
        <br />
        {iso.zone === 'high' ? (
          <span className="is-high">no regulator: all pipe at high pressure</span>
        ) : (
          <>
            <span className="is-high">high pressure</span> <span className="is-low">behind the regulator</span>
          </>
        )}
      </p>
    </div>
  );
}

/** The drawing's camera: fits it until the user moves it, and anew for another drawing or size of the frame. */
function useIsometricCamera(shown: ShownIsometric, width: number, height: number): { readonly view: Viewport; become(camera: Camera): void; showAll(): void } {
  const key = `${shown.iso.network.network.id} ${shown.search}`;
  const fitted = useRef<{ readonly key: string; readonly camera: Camera } | null>(null);
  const [moved, setMoved] = useState<{ readonly key: string; readonly camera: Camera } | null>(null);
  const sized = `${key} ${width} ${height}`;
  // A drawing that is edited keeps its place under the eye; only another drawing or frame is fitted anew.
  if (fitted.current?.key !== sized) fitted.current = { key: sized, camera: fittedIsometric(shown, width, height) };
  const camera = moved?.key === key ? moved.camera : fitted.current.camera;
  const view = useMemo((): Viewport => ({ camera, width, height }), [camera, width, height]);
  const keyNow = useRef(key);
  const shownNow = useRef(shown);
  useLayoutEffect(() => {
    keyNow.current = key;
    shownNow.current = shown;
  }, [key, shown]);
  const actions = useMemo(
    () => ({
      become: (next: Camera): void => setMoved({ key: keyNow.current, camera: next }),
      showAll: (): void => {
        fitted.current = null;
        setMoved(null);
      },
    }),
    [],
  );
  return { view, ...actions };
}
