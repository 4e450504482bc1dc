import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva';
import { type Ref, isSameRef, refKey } from '#shared/model/plan';
import { wheelFactor } from '../input/camera-input.ts';
import { makeFrameQueue } from '../input/frame-queue.ts';
import { PointerField } from '../input/pointer-field.tsx';
import { isForControl } from '../input/tool-keys.ts';
import type { Session, State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { drawSection } from './draw-section.ts';
import type { Paint } from './paint.ts';
import { PaintedLayer } from './painted-layer.tsx';
import type { Px } from './pen.ts';
import type { SectionCut } from './section-cut.ts';
import { heightCommand, heightHandleOf } from './section-heights.ts';
import { type HeightHandle, handyHeight_m, heightHandleAt, sectionThingAt } from './section-pick.ts';
import { type SectionView, fittedSection, pannedSection, sectionPlace, sectionPx, zoomedSection } from './section-view.ts';
import { useDevicePixels } from './use-device-pixels.ts';
import { useInk } from './use-ink.ts';

const REACH_px = 9;
/** A press becomes a drag after so far [px]. */
const SLACK_px = 3;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

type Hold =
  | { readonly kind: 'height'; readonly handle: HeightHandle; readonly from: Px; readonly isDragging: boolean }
  | { readonly kind: 'pan'; readonly last: Px };

interface SectionBoardProps {
  readonly cut: SectionCut;
  readonly lengths: 'feet' | 'metric';
  readonly width: number;
  readonly height: number;
}

/** The section itself: heights can be dragged and typed, the view zoomed and moved. */
export function SectionBoard({ cut, lengths, width, height }: SectionBoardProps) {
  const store = useStoreItself();
  const ink = useInk();
  const pixelRatio = useDevicePixels();
  const selection = useStore(selectionOf);
  const element = useRef<HTMLDivElement>(null);
  const [hold, become] = useState<Hold | null>(null);
  const [over, hover] = useState<HeightHandle | null>(null);
  const [typing, type] = useState<{ begins: string; handle: HeightHandle; at: Px } | null>(null);
  const { view, move, showAll } = useSectionView(cut, width, height, hold?.kind === 'height');
  const frames = useRef(makeFrameQueue());
  useEffect(() => () => frames.current.stop(), []);

  const held: Ref | null = hold?.kind === 'height' ? hold.handle.ref : null;
  const paints = useMemo((): Paint[] => {
    const look = { ink, lengths, selection: new Set(selection.map(refKey)), held };
    return [(pen) => drawSection(pen, view, cut, look)];
  }, [view, cut, ink, lengths, selection, held]);
  const stage = useMemo(() => ({ camera: { at: { x: 0, y: 0 }, scale_px_m: 1 }, width, height }), [width, height]);

  const placeOf = (event: { readonly clientX: number; readonly clientY: number }): Px => {
    const box = element.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };
  const drop = useCallback((): void => {
    frames.current.stop();
    store.preview(null);
    become(null);
  }, [store]);

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const box = target.getBoundingClientRect();
      const p = { x: event.clientX - box.left, y: event.clientY - box.top };
      move((now) => (event.shiftKey ? pannedSection(now, -(event.deltaX || event.deltaY), 0) : zoomedSection(now, p, wheelFactor(event))));
    };
    target.addEventListener('wheel', onWheel, { passive: false });
    return () => target.removeEventListener('wheel', onWheel);
  }, [move]);

  const press = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeOf(event);
    event.currentTarget.focus({ preventScroll: true });
    if (event.button === 2) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const handle = event.button === 0 ? heightHandleAt(cut, view, p, REACH_px) : undefined;
    if (handle) {
      if (!selection.some((ref) => isSameRef(ref, handle.ref))) store.session({ selection: [handle.ref] });
      become({ kind: 'height', handle, from: p, isDragging: false });
      return;
    }
    const thing = event.button === 0 ? sectionThingAt(cut, view, p, REACH_px) : undefined;
    if (thing) store.session({ selection: [thing] });
    become({ kind: 'pan', last: p });
  };

  const drag = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeOf(event);
    if (!hold) {
      const handle = heightHandleAt(cut, view, p, REACH_px) ?? null;
      if (handle?.ref.id !== over?.ref.id) hover(handle);
      return;
    }
    if (hold.kind === 'pan') {
      move((now) => pannedSection(now, p.x - hold.last.x, p.y - hold.last.y));
      become({ kind: 'pan', last: p });
      return;
    }
    if (!hold.isDragging && Math.abs(p.y - hold.from.y) < SLACK_px) return;
    if (!hold.isDragging) become({ ...hold, isDragging: true });
    const z_m = draggedTo(hold, p, event.altKey);
    frames.current.next(() => store.preview(heightCommand(hold.handle, z_m)));
  };

  const draggedTo = ({ handle, from }: Extract<Hold, { kind: 'height' }>, p: Px, fine: boolean): number =>
    handyHeight_m(handle.z_m + sectionPlace(view, p).z - sectionPlace(view, from).z, lengths, fine);

  const release = (event: React.PointerEvent<HTMLDivElement>): void => {
    if (hold?.kind === 'height' && hold.isDragging) {
      frames.current.stop();
      store.commit(heightCommand(hold.handle, draggedTo(hold, placeOf(event), event.altKey)));
    }
    become(null);
  };

  const onKey = (event: React.KeyboardEvent<HTMLDivElement>): void => {
    if (isForControl(event.target, event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape' && hold) {
      event.stopPropagation();
      drop();
      return;
    }
    const begins = /^[\d.,'"-]$/.test(event.key) ? event.key : event.key === 'Enter' ? '' : null;
    const handle = begins === null ? undefined : heightHandleOf(cut, selection);
    if (begins === null || !handle) return;
    event.preventDefault();
    event.stopPropagation();
    type({ begins, handle, at: handlePx(cut, view, handle) });
  };
  const closeField = useCallback(() => {
    type(null);
    element.current?.focus({ preventScroll: true });
  }, []);

  return (
    <div
      ref={element}
      className={`section-board ${over || held ? 'is-height' : ''}`}
      role="application"
      aria-label={`Section strip: ${cut.path.title}. Type a figure to set the height of what is selected.`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing board takes the keys of its tools
      tabIndex={0}
      data-section={`${view.at.s} ${view.at.z} ${view.scale_px_m}`}
      onPointerDown={press}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={drop}
      onPointerLeave={() => hover(null)}
      onDoubleClick={(event) => {
        const handle = heightHandleAt(cut, view, placeOf(event), REACH_px);
        if (handle) type({ begins: '', handle, at: handlePx(cut, view, handle) });
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
            if (height_m !== null) store.commit(heightCommand(typing.handle, height_m));
          }}
          close={closeField}
        />
      ) : null}
    </div>
  );
}

const HEIGHT_ONLY = ['height'] as const;

/** Where a handle stands on the strip. */
function handlePx(cut: SectionCut, view: SectionView, handle: HeightHandle): Px {
  const isIt = ({ ref }: { readonly ref: Ref }): boolean => isSameRef(ref, handle.ref);
  const pipe = cut.pipes.find(isIt);
  const at = cut.nodes.find(isIt)?.at ?? cut.supports.find(isIt)?.at ?? cut.devices.find(isIt)?.at ?? cut.nozzles.find(({ nozzle }) => isIt(nozzle))?.at ?? (pipe && { s: (pipe.a.s + pipe.b.s) / 2, z: pipe.a.z });
  return at ? sectionPx(view, at) : { x: view.width / 2, y: view.height / 2 };
}

interface ShownSection {
  readonly view: SectionView;
  move(change: (view: SectionView) => SectionView): void;
  showAll(): void;
}

/** The strip's view: fits the section until the user moves it, and anew for another way or size; it holds still under a drag. */
function useSectionView(cut: SectionCut, width: number, height: number, isHeld: boolean): ShownSection {
  const way = cut.path.places.map(({ x, y }) => `${x} ${y}`).join(' ');
  const key = `${cut.path.kind} ${way} ${width} ${height}`;
  const [moved, setMoved] = useState<{ readonly key: string; readonly view: SectionView } | null>(null);
  const last = useRef<SectionView>(null);
  const isMoved = moved?.key === key;
  const view = useMemo(() => (isMoved && moved ? moved.view : fittedSection(cut, width, height)), [cut, width, height, isMoved, moved]);
  const shown = isHeld && last.current && last.current.width === width && last.current.height === height ? last.current : view;
  useLayoutEffect(() => {
    last.current = shown;
  }, [shown]);
  const move = useCallback(
    (change: (now: SectionView) => SectionView) => {
      setMoved((before) => ({ key, view: change(before?.key === key ? before.view : (last.current ?? fittedSection(cut, width, height))) }));
    },
    [key, cut, width, height],
  );
  const showAll = useCallback(() => setMoved(null), []);
  return { view: shown, move, showAll };
}
