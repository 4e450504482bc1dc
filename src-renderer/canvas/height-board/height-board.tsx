import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva';
import type { Command } from '#shared/commands/command';
import type { Ref } from '#shared/model/plan';
import { wheelFactor } from '../../input/camera-input.ts';
import { makeFrameQueue } from '../../input/frame-queue.ts';
import { placeIn } from '../../input/place-in.ts';
import { PointerField } from '../../input/pointer-field.tsx';
import { isForControl } from '../../input/tool-keys.ts';
import { useStoreItself } from '../../store/use-store.ts';
import type { Paint } from '../paint.ts';
import { PaintedLayer } from '../painted-layer.tsx';
import type { Px } from '../pen.ts';
import { handyHeight_m } from '../section-pick.ts';
import { useDevicePixels } from '../use-device-pixels.ts';
import type { FittedView } from './use-fitted-view.ts';
import type { Hands, Hold } from './use-hands.ts';
import './height-board.css';

/** A press becomes a drag after so far [px]. */
const SLACK_px = 3;
const HEIGHT_ONLY = ['height'] as const;

interface HeightBoardProps<V, H extends { readonly z_m: number }> {
  /** `section` for class `section-board` and attribute `data-section`. */
  readonly name: string;
  readonly label: string;
  /** Where the view lies, in figures: written on the board itself. */
  readonly lies: string;
  readonly paints: readonly Paint[];
  readonly width: number;
  readonly height: number;
  readonly lengths: 'feet' | 'metric';
  readonly shown: FittedView<V>;
  readonly hands: Hands<H>;
  /** What can be dragged at a place of the board. */
  handleAt(p: Px): H | undefined;
  /** Whether two handles are the same for the pointer that is over them. */
  isSame(a: H, b: H): boolean;
  /** The selection once a handle is held there. */
  selectedBy(handle: H, p: Px): readonly Ref[];
  /** What is selected by a click beside all handles. */
  thingAt(p: Px): Ref | undefined;
  /** Height of a place of the board [m above the finished floor]. */
  heightAt_m(p: Px): number;
  /** No height is dragged below this one [m]. */
  readonly least_m?: number;
  command(handle: H, to_m: number): Command;
  /** Where the field for a handle's height opens. */
  fieldAt(handle: H): Px;
  /** What a typed height is for. */
  handleOfSelected(): H | undefined;
  /** Keys that begin a typed height. */
  readonly figures: RegExp;
  /** Further keys of this board; says whether it takes one. */
  takeKey?(key: string): boolean;
  panned(view: V, dx_px: number, dy_px: number): V;
  zoomed(view: V, at: Px, factor: number): V;
}

/** A drawing seen from the side: things are selected by a click, heights dragged and typed, the view zoomed and moved. */
export function HeightBoard<V, H extends { readonly z_m: number }>(props: HeightBoardProps<V, H>) {
  const { name, label, lies, paints, width, height, lengths, shown, hands, handleAt, command } = props;
  const { hold, held, over, become, hover } = hands;
  const { move, showAll } = shown;
  const store = useStoreItself();
  const pixelRatio = useDevicePixels();
  const element = useRef<HTMLDivElement>(null);
  const [typing, type] = useState<{ readonly begins: string; readonly handle: H; readonly at: Px } | null>(null);
  const frames = useRef(makeFrameQueue());
  useEffect(() => () => frames.current.stop(), []);
  const latest = useRef(props);
  useLayoutEffect(() => {
    latest.current = props;
  });
  const stage = useMemo(() => ({ camera: { at: { x: 0, y: 0 }, scale_px_m: 1 }, width, height }), [width, height]);

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const { panned, zoomed, shown: { move: change } } = latest.current;
      const p = placeIn(target, event);
      change((now) => (event.shiftKey ? panned(now, -(event.deltaX || event.deltaY), 0) : zoomed(now, p, wheelFactor(event))));
    };
    target.addEventListener('wheel', onWheel, { passive: false });
    return () => target.removeEventListener('wheel', onWheel);
  }, []);

  const press = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeIn(event.currentTarget, event);
    event.currentTarget.focus({ preventScroll: true });
    if (event.button === 2) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const handle = event.button === 0 ? handleAt(p) : undefined;
    if (handle) {
      const selection = props.selectedBy(handle, p);
      if (selection !== store.get().session.selection) store.session({ selection });
      become({ kind: 'height', handle, from: p, isDragging: false });
      return;
    }
    const thing = event.button === 0 ? props.thingAt(p) : undefined;
    if (thing) store.session({ selection: [thing] });
    become({ kind: 'pan', last: p });
  };

  const draggedTo_m = ({ handle, from }: Extract<Hold<H>, { kind: 'height' }>, p: Px, fine: boolean): number =>
    Math.max(props.least_m ?? Number.NEGATIVE_INFINITY, handyHeight_m(handle.z_m + props.heightAt_m(p) - props.heightAt_m(from), lengths, fine));

  const drag = (event: React.PointerEvent<HTMLDivElement>): void => {
    const p = placeIn(event.currentTarget, event);
    if (!hold) {
      const handle = handleAt(p) ?? null;
      if (handle && over ? !props.isSame(handle, over) : handle !== over) hover(handle);
      return;
    }
    if (hold.kind === 'pan') {
      move((now) => props.panned(now, p.x - hold.last.x, p.y - hold.last.y));
      become({ kind: 'pan', last: p });
      return;
    }
    if (!hold.isDragging && Math.abs(p.y - hold.from.y) < SLACK_px) return;
    if (!hold.isDragging) become({ ...hold, isDragging: true });
    const z_m = draggedTo_m(hold, p, event.altKey);
    frames.current.next(() => store.preview(command(hold.handle, z_m)));
  };

  const release = (event: React.PointerEvent<HTMLDivElement>): void => {
    if (hold?.kind === 'height' && hold.isDragging) {
      frames.current.stop();
      store.commit(command(hold.handle, draggedTo_m(hold, placeIn(event.currentTarget, event), event.altKey)));
    }
    become(null);
  };
  const drop = (): void => {
    frames.current.stop();
    store.preview(null);
    become(null);
  };

  const askFor = (begins: string, handle: H): void => type({ begins, handle, at: props.fieldAt(handle) });
  const takeKey = (key: string): boolean => {
    if (key === 'Escape' && hold) {
      drop();
      return true;
    }
    if (props.takeKey?.(key)) return true;
    const begins = props.figures.test(key) ? key : key === 'Enter' ? '' : null;
    const handle = begins === null ? undefined : props.handleOfSelected();
    if (begins === null || !handle) return false;
    askFor(begins, handle);
    return true;
  };
  const onKey = (event: React.KeyboardEvent<HTMLDivElement>): void => {
    if (isForControl(event.target, event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!takeKey(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const closeField = useCallback(() => {
    type(null);
    element.current?.focus({ preventScroll: true });
  }, []);

  return (
    <div
      ref={element}
      className={`height-board ${name}-board ${over || held ? 'is-height' : ''}`}
      role="application"
      aria-label={label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing board takes the keys of its tools
      tabIndex={0}
      {...{ [`data-${name}`]: lies }}
      onPointerDown={press}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={drop}
      onPointerLeave={() => hover(null)}
      onDoubleClick={(event) => {
        const handle = handleAt(placeIn(event.currentTarget, event));
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
            if (height_m !== null) store.commit(command(typing.handle, height_m));
          }}
          close={closeField}
        />
      ) : null}
    </div>
  );
}
