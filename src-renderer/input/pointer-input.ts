import type { ScreenPoint } from '#shared/geometry/point';
import { type Viewport, toPlanPlace } from '../canvas/viewport.ts';
import type { ToolEvent } from '../tools/tool.ts';
import { makeFrameQueue } from './frame-queue.ts';
import { keepBox } from './keep-box.ts';

/** What the pointer acts on. */
export interface PointerTarget {
  view(): Viewport;
  /** A tool's event; `point` is the bare place, the tools' runner catches what is near. */
  send(event: ToolEvent): void;
  /** The pointer left the board. */
  left(): void;
  /** A press that is taken by something on the board other than the tool, e.g. the mark of a finding. */
  takes(at: ScreenPoint): boolean;
  /** Where the pointer is on the screen; null off the board. */
  at(place: ScreenPoint | null): void;
  /** What is under the pointer is to be marked; once a frame. */
  hover(place: ScreenPoint | null): void;
}

/** How near the pointer catches and picks [px]. */
const REACH_px = 9;
const REACH_TOUCH_px = 18;
/** A finger that moves less than this still only taps [px]. */
const TOUCH_SLACK_px = 8;

/** Whether a press is for the tool: the first button or the first finger, and no key that moves the board. */
export const isForTool = (event: Pick<PointerEvent, 'button' | 'isPrimary'>, spaceHeld: boolean): boolean => event.button === 0 && event.isPrimary && !spaceHeld;

/** Whether a pointer is taking the board along rather than drawing on it. */
const takesBoard = ({ buttons }: PointerEvent, spaceHeld: boolean): boolean => (buttons & 4) !== 0 || ((buttons & 1) !== 0 && spaceHeld);

/**
 * Turns the pointer's presses and moves over an element into tool events. Moves are passed on once a frame; the
 * pointer is captured while it is down, and a press that the system takes away is cancelled.
 * @param spaceHeld whether the key that moves the board is down
 * @returns how to stop listening
 */
export function listenToPointer(element: HTMLElement, target: PointerTarget, spaceHeld: () => boolean): () => void {
  const frames = makeFrameQueue();
  let down: number | null = null;
  /** First press of a finger: it counts once the finger moves or lifts, for a second finger may follow. */
  let touched: { readonly at: ScreenPoint; readonly move: ToolEvent; readonly press: ToolEvent } | null = null;

  const { placeOf, stop: forgetBox } = keepBox(element);
  const toolEvent = (kind: 'down' | 'move' | 'up' | 'double', event: MouseEvent): ToolEvent => {
    const view = target.view();
    const raw = toPlanPlace(view, placeOf(event));
    const reach = event instanceof PointerEvent && event.pointerType === 'touch' ? REACH_TOUCH_px : REACH_px;
    return { kind, point: raw, raw, reach_m: reach / view.camera.scale_px_m, shift: event.shiftKey, alt: event.altKey, mod: event.ctrlKey || event.metaKey };
  };
  const pressTouched = (): void => {
    if (!touched) return;
    const { move, press } = touched;
    touched = null;
    target.send(move);
    target.send(press);
  };
  const cancel = (): void => {
    frames.stop();
    if (touched) {
      touched = null;
      down = null;
    }
    if (down === null) return;
    down = null;
    target.send({ kind: 'cancel' });
  };

  const onDown = (event: PointerEvent): void => {
    if (event.pointerType === 'touch' && !event.isPrimary) {
      cancel();
      return;
    }
    if (!isForTool(event, spaceHeld())) return;
    element.focus({ preventScroll: true });
    frames.flush();
    if (target.takes(placeOf(event))) return;
    down = event.pointerId;
    element.setPointerCapture(event.pointerId);
    touched = { at: placeOf(event), move: toolEvent('move', event), press: toolEvent('down', event) };
    if (event.pointerType !== 'touch') pressTouched();
  };
  const onMove = (event: PointerEvent): void => {
    if (!event.isPrimary) return;
    const place = placeOf(event);
    target.at(place);
    // The plan goes along with the pointer, which stays over the same place of it.
    if (down === null && takesBoard(event, spaceHeld())) return;
    if (touched) {
      if (Math.hypot(place.x - touched.at.x, place.y - touched.at.y) < TOUCH_SLACK_px) return;
      pressTouched();
    }
    const move = toolEvent('move', event);
    frames.next(() => {
      target.hover(place);
      target.send(move);
    });
  };
  const onUp = (event: PointerEvent): void => {
    if (down !== event.pointerId) return;
    frames.flush();
    pressTouched();
    down = null;
    target.send(toolEvent('up', event));
  };
  const onCancel = (event: PointerEvent): void => {
    if (down === event.pointerId) cancel();
  };
  const onDouble = (event: MouseEvent): void => {
    if (event.button !== 0 || target.takes(placeOf(event))) return;
    frames.flush();
    target.send(toolEvent('double', event));
  };
  const onLeave = (event: PointerEvent): void => {
    if (down !== null || !event.isPrimary) return;
    frames.stop();
    target.at(null);
    target.hover(null);
    target.left();
  };

  const listeners = [
    ['pointerdown', onDown],
    ['pointermove', onMove],
    ['pointerup', onUp],
    ['pointercancel', onCancel],
    ['lostpointercapture', onCancel],
    ['pointerleave', onLeave],
    ['dblclick', onDouble],
  ] as const;
  for (const [name, listener] of listeners) element.addEventListener(name, listener as EventListener);
  return () => {
    frames.stop();
    forgetBox();
    for (const [name, listener] of listeners) element.removeEventListener(name, listener as EventListener);
  };
}
