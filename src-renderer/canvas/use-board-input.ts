import { useEffect, useLayoutEffect, useRef } from 'react';
import type { PlanPoint, ScreenPoint } from '#shared/geometry/point';
import { type Ref, isSameRef } from '#shared/model/plan';
import { findingKey } from '#shared/rules/finding';
import { closesPopover } from '../input/closes-popover.ts';
import { useToolRunner } from '../input/board-context.ts';
import { listenToCamera } from '../input/camera-input.ts';
import { hoveredThing } from '../input/hovered-thing.ts';
import { steppedPlace } from '../input/keyboard-pointer.ts';
import { listenToPointer } from '../input/pointer-input.ts';
import { isForControl, meaningOf } from '../input/tool-keys.ts';
import type { Store } from '../store/state.ts';
import { useStoreItself } from '../store/use-store.ts';
import { type FindingMark, markAt } from './draw-findings.ts';
import { type Viewport, toPlanPlace, toScreen, visibleBox } from './viewport.ts';

/** How near the pointer must be to mark what a click would pick [px]. */
const HOVER_px = 9;

/** What was typed to open the field at the pointer, and where. */
export interface Typing {
  readonly begins: string;
  readonly at: ScreenPoint;
}

interface BoardPointer {
  readonly element: { readonly current: HTMLDivElement | null };
  /** Kept up to date with where the pointer is. */
  readonly pointer: { current: ScreenPoint | null };
  readonly spaceHeld: { readonly current: boolean };
  readonly marks: readonly FindingMark[];
  hover(change: (before: Ref | null) => Ref | null): void;
  moving(isMoving: boolean): void;
}

/** Opens the next finding of the mark under a press of the select tool. Answers whether there was a mark. */
function takeMark(store: Store, marks: readonly FindingMark[], view: Viewport, place: ScreenPoint): boolean {
  const { session } = store.get();
  const mark = session.tool === 'select' && markAt(view, marks, place);
  if (!mark) return false;
  const keys = mark.findings.map(findingKey);
  const next = mark.findings[(keys.indexOf(session.finding ?? '') + 1) % keys.length];
  if (!next) return false;
  const { subject } = next;
  store.session({ finding: findingKey(next), ...(subject.kind === 'plan' || subject.kind === 'profile' ? {} : { selection: [subject] }) });
  return true;
}

/** Lets the pointer draw, pick, zoom and move on the board. */
export function useBoardPointer({ element, pointer, spaceHeld, marks, hover, moving }: BoardPointer): void {
  const store = useStoreItself();
  const runner = useToolRunner();
  const latest = useRef(marks);
  useLayoutEffect(() => {
    latest.current = marks;
  }, [marks]);

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const view = (): Viewport => {
      const { session } = store.get();
      return { camera: session.camera, ...session.board };
    };
    const stopPointer = listenToPointer(
      target,
      {
        view,
        send: runner.send,
        left: () => store.session({ pointer: null }),
        at: (place) => {
          pointer.current = place;
        },
        hover: (place) => {
          const shown = view();
          const ref = place && hoveredThing(store.get(), toPlanPlace(shown, place), HOVER_px / shown.camera.scale_px_m);
          hover((before) => (before && ref && isSameRef(before, ref) ? before : ref));
        },
        takes: (place) => takeMark(store, latest.current, view(), place),
      },
      () => spaceHeld.current,
    );
    const stopCamera = listenToCamera(target, { view, become: (camera) => store.session({ camera }), moving }, () => spaceHeld.current);
    return () => {
      stopPointer();
      stopCamera();
    };
  }, [store, runner, element, pointer, spaceHeld, hover, moving]);
}

/** Hears the keys of the tool at work, wherever the focus is but in a field; a digit opens the field at the pointer. */
export function useBoardKeys(type: (typing: Typing) => void, pointer: { readonly current: ScreenPoint | null }): void {
  const store = useStoreItself();
  const runner = useToolRunner();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (isForControl(event.target, event.key) || closesPopover(event)) return;
      const { session, preview } = store.get();
      const meaning = meaningOf(event, { tool: session.tool, dialog: session.dialog, isDragging: preview !== null }, runner.look());
      const focus = event.target instanceof Element ? event.target : null;
      if (!meaning || (meaning.kind === 'type' && focus?.closest('.section-strip'))) return;
      // Away from the board Tab goes on to the next control, as everywhere.
      if (event.key === 'Tab' && !focus?.closest('.board')) return;
      event.preventDefault();
      event.stopPropagation();
      if (meaning.kind === 'tool') runner.send(meaning.event);
      else type({ begins: meaning.text, at: pointer.current ?? { x: session.board.width / 2, y: session.board.height / 2 } });
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [store, runner, type, pointer]);
}

/** How near the keyboard's pointer catches and picks, in grid steps. */
const KEYBOARD_REACH = 0.3;

/**
 * Draws without a mouse: with a drawing tool the arrow keys take the pointer from grid line to grid line, a tap on the
 * space bar clicks there. The board follows.
 */
export function useKeyboardPointer(element: { readonly current: HTMLDivElement | null }, pointer: { current: ScreenPoint | null }): void {
  const store = useStoreItself();
  const runner = useToolRunner();
  useEffect(() => {
    const target = element.current;
    if (!target) return;
    let at: PlanPoint | null = null;
    const send = (kind: 'move' | 'down' | 'up', place: PlanPoint): void => {
      const { grid_m } = store.get().history.present.settings;
      runner.send({ kind, point: place, raw: place, reach_m: grid_m * KEYBOARD_REACH, shift: false, alt: false });
    };
    const follow = (place: PlanPoint): void => {
      const { session } = store.get();
      const view = { camera: session.camera, ...session.board };
      const box = visibleBox(view, -40);
      const isSeen = place.x >= box.minX && place.x <= box.maxX && place.y >= box.minY && place.y <= box.maxY;
      if (!isSeen) store.session({ camera: { ...session.camera, at: place } });
      pointer.current = toScreen({ ...view, camera: store.get().session.camera }, place);
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      const { session, history } = store.get();
      if (session.tool === 'select' || session.dialog !== null || event.ctrlKey || event.metaKey || event.altKey) return;
      const next = steppedPlace(at ?? session.pointer ?? session.camera.at, event, history.present.settings.grid_m);
      if (!next) return;
      event.preventDefault();
      event.stopPropagation();
      at = next;
      follow(next);
      send('move', next);
    };
    const onKeyUp = (event: KeyboardEvent): void => {
      if (event.code !== 'Space' || !at || store.get().session.tool === 'select') return;
      send('down', at);
      send('up', at);
    };
    const onPointer = (): void => {
      at = null;
    };
    target.addEventListener('keydown', onKeyDown);
    target.addEventListener('keyup', onKeyUp);
    target.addEventListener('pointermove', onPointer);
    return () => {
      target.removeEventListener('keydown', onKeyDown);
      target.removeEventListener('keyup', onKeyUp);
      target.removeEventListener('pointermove', onPointer);
    };
  }, [store, runner, element, pointer]);
}
