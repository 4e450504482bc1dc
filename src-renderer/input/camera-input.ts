import type { ScreenPoint } from '#shared/geometry/point';
import { type Viewport, pannedBy, zoomedAt } from '../canvas/viewport.ts';
import type { Camera } from '../store/state.ts';
import { makeFrameQueue } from './frame-queue.ts';
import { keepBox } from './keep-box.ts';

/** What moving the board acts on. */
export interface CameraTarget {
  view(): Viewport;
  become(camera: Camera): void;
  /** The board is being moved: the pointer shows a hand. */
  moving(isMoving: boolean): void;
}

/** Zoom of one notch of a wheel. */
const NOTCH = 1.18;
/** A wheel that also went sideways lately is a touch pad [ms]. */
const TOUCH_PAD_ms = 400;

/** How much a turn of the wheel zooms in. */
export function wheelFactor(event: Pick<WheelEvent, 'deltaY' | 'deltaMode' | 'ctrlKey'>): number {
  const lines = event.deltaMode === 1 ? event.deltaY / 3 : event.deltaMode === 2 ? event.deltaY : event.deltaY / 100;
  const notches = Math.max(-3, Math.min(3, lines)) * (event.ctrlKey && event.deltaMode === 0 ? 4 : 1);
  return NOTCH ** -notches;
}

/** Camera after two fingers went from one pair of places to another: their middle and their distance are kept. */
export function pinched(view: Viewport, before: readonly [ScreenPoint, ScreenPoint], after: readonly [ScreenPoint, ScreenPoint]): Camera {
  const middle = ([a, b]: readonly [ScreenPoint, ScreenPoint]): ScreenPoint => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const apart = ([a, b]: readonly [ScreenPoint, ScreenPoint]): number => Math.max(1, Math.hypot(b.x - a.x, b.y - a.y));
  const from = middle(before);
  const to = middle(after);
  const zoomed = zoomedAt(view, from, apart(after) / apart(before));
  return pannedBy({ ...view, camera: zoomed }, to.x - from.x, to.y - from.y);
}

/**
 * Moves and zooms the board: wheel at the pointer, middle button, space and drag, two fingers, touch pad.
 * Changes are applied once a frame.
 * @param spaceHeld whether the key that moves the board is down
 * @returns how to stop listening
 */
export function listenToCamera(element: HTMLElement, target: CameraTarget, spaceHeld: () => boolean): () => void {
  const frames = makeFrameQueue();
  /** View as it will be when all that waits has been applied. */
  let ahead: Viewport | null = null;
  let dragging: { id: number; last: ScreenPoint } | null = null;
  let sidewaysAt_ms = Number.NEGATIVE_INFINITY;
  const fingers = new Map<number, ScreenPoint>();

  const view = (): Viewport => ahead ?? target.view();
  const become = (camera: Camera): void => {
    ahead = { ...view(), camera };
    frames.next(() => {
      ahead = null;
      target.become(camera);
    });
  };
  const { placeOf, stop: forgetBox } = keepBox(element);

  const onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    if (event.deltaX !== 0 && !event.shiftKey) sidewaysAt_ms = event.timeStamp;
    const isTouchPad = event.timeStamp - sidewaysAt_ms < TOUCH_PAD_ms && !event.ctrlKey;
    if (event.shiftKey && !event.ctrlKey) become(pannedBy(view(), -(event.deltaX || event.deltaY), 0));
    else if (isTouchPad) become(pannedBy(view(), -event.deltaX, -event.deltaY));
    else become(zoomedAt(view(), placeOf(event), wheelFactor(event)));
  };
  const onDown = (event: PointerEvent): void => {
    if (event.pointerType === 'touch') {
      fingers.set(event.pointerId, placeOf(event));
      return;
    }
    if (event.button !== 1 && !(event.button === 0 && spaceHeld())) return;
    event.preventDefault();
    element.setPointerCapture(event.pointerId);
    dragging = { id: event.pointerId, last: placeOf(event) };
    target.moving(true);
  };
  const onMove = (event: PointerEvent): void => {
    const place = placeOf(event);
    if (dragging?.id === event.pointerId) {
      become(pannedBy(view(), place.x - dragging.last.x, place.y - dragging.last.y));
      dragging = { id: event.pointerId, last: place };
      return;
    }
    const was = fingers.get(event.pointerId);
    if (!was) return;
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    if (other) become(pinched(view(), [was, other], [place, other]));
    fingers.set(event.pointerId, place);
  };
  const onUp = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    if (dragging?.id !== event.pointerId) return;
    dragging = null;
    frames.flush();
    target.moving(false);
  };
  /** The middle button would start the browser's own scrolling. */
  const onMiddle = (event: MouseEvent): void => {
    if (event.button === 1) event.preventDefault();
  };

  element.addEventListener('wheel', onWheel, { passive: false });
  const listeners = [
    ['pointerdown', onDown],
    ['pointermove', onMove],
    ['pointerup', onUp],
    ['pointercancel', onUp],
    ['mousedown', onMiddle],
  ] as const;
  for (const [name, listener] of listeners) element.addEventListener(name, listener as EventListener);
  return () => {
    frames.stop();
    forgetBox();
    element.removeEventListener('wheel', onWheel);
    for (const [name, listener] of listeners) element.removeEventListener(name, listener as EventListener);
  };
}
