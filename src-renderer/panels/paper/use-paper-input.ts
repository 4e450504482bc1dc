import { type KeyboardEvent, type MouseEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import { editSheetNote } from '#shared/commands/edit-sheet-note';
import { moveDimensionText } from '#shared/commands/move-dimension-text';
import { placeView } from '#shared/commands/place-view';
import { removeSheetNote } from '#shared/commands/remove-sheet-note';
import { resetDimensionText } from '#shared/commands/reset-dimension-text';
import { resetView } from '#shared/commands/reset-view';
import { sheetLayout } from '#shared/sheets/frame';
import { viewOfDimension } from '#shared/sheets/hand-placed';
import type { Sheet } from '#shared/sheets/sheet';
import { type PaperBox, boxAround, cornersOf } from '#shared/sheets/text-box';
import { viewArea } from '#shared/sheets/view-set';
import { useCommit } from '../bench/use-plan.ts';
import type { PaperCamera } from '../stages/paint-sheet.ts';
import { snapText, textMovedBy } from './dimension-handle.ts';
import { CORNERS, type Corner, type PaperHit, type PaperPlace, cornerOf, hitAt, partOf, pulled, shownBox, snapMove } from './paper-geometry.ts';

interface PaperInput {
  readonly sheet: Sheet;
  readonly camera: PaperCamera;
  readonly field: RefObject<HTMLDivElement | null>;
  readonly chosen: PaperHit | null;
  choose(hit: PaperHit | null): void;
  editNote(id: string): void;
  addNote(): void;
  step(by: number): void;
  fit(): void;
  zoom(factor: number, x_px: number, y_px: number): void;
  pan(dx_px: number, dy_px: number): void;
  close(): void;
}

type Drag = { readonly kind: 'pan'; x: number; y: number } | { readonly kind: 'move'; readonly hit: PaperHit; readonly from: PaperPlace } | { readonly kind: 'pull'; readonly key: string; readonly corner: Corner };
interface Ghost {
  readonly box: PaperBox;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly dx: number;
  readonly dy: number;
  /** Of a text, which may be turned. */
  readonly corners?: readonly number[];
}

/** How near a handle is taken, and how far a press may wander without being a drag [px]. */
const REACH_px = 8;
const STILL_px = 3;
/** How near a text is kept on its line [px]. */
const TEXT_REACH_px = 4;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** Mouse and keys over the paper: a drag shows where the view would stand and places it on release, as one step. */
export function usePaperInput({ sheet, camera, field, chosen, choose, editNote, addNote, step, fit: showWhole, zoom, pan, close }: PaperInput) {
  const commit = useCommit();
  const drag = useRef<Drag | null>(null);
  const [ghost, setGhost] = useState<Ghost | null>(null);
  const placeOf = (event: { clientX: number; clientY: number }): PaperPlace => {
    const box = field.current?.getBoundingClientRect();
    return { x: camera.x + (event.clientX - (box?.left ?? 0)) / camera.scale, y: camera.y + (event.clientY - (box?.top ?? 0)) / camera.scale };
  };
  const dimensionOf = (hit: PaperHit) => (hit.kind === 'dimension' ? sheet.dimensions.find(({ key }) => key === hit.key) : undefined);
  const boxOf = (hit: PaperHit): PaperBox | undefined => {
    const text = dimensionOf(hit);
    if (hit.kind === 'note') return sheet.notes.find(({ id }) => id === hit.id)?.box;
    return text ? boxAround(cornersOf(text.box)) : sheet.views.find(({ key }) => key === hit.key)?.box;
  };
  const viewOf = (key: string) => sheet.views.find((view) => view.key === key);

  /** Moves what is chosen on paper [mm]. */
  const move = (hit: PaperHit, dx: number, dy: number): void => {
    const box = boxOf(hit);
    const view = hit.kind === 'view' ? viewOf(hit.key) : undefined;
    const text = dimensionOf(hit);
    if (text) commit(moveDimensionText(text.key, textMovedBy(text, dx, dy)));
    else if (view) commit(placeView(view.key, { at: { x_mm: view.corner.x_mm + dx, y_mm: view.corner.y_mm + dy } }));
    else if (hit.kind === 'note' && box) commit(editSheetNote(hit.id, { x_mm: box.left + dx, y_mm: box.top + dy }));
  };

  const onPointerDown = (event: PointerEvent<HTMLDivElement>): void => {
    event.currentTarget.focus();
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = placeOf(event);
    const view = chosen?.kind === 'view' ? viewOf(chosen.key) : undefined;
    const shown = view && shownBox(view);
    const corner = shown && CORNERS.find((each) => Math.hypot(cornerOf(shown, each).x - at.x, cornerOf(shown, each).y - at.y) * camera.scale <= REACH_px);
    if (event.button === 0 && view && corner) {
      drag.current = { kind: 'pull', key: view.key, corner };
      return;
    }
    const hit = event.button === 0 ? hitAt(sheet, at) : undefined;
    if (event.button === 0) choose(hit ?? null);
    drag.current = hit ? { kind: 'move', hit, from: at } : { kind: 'pan', x: event.clientX, y: event.clientY };
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>): void => {
    const now = drag.current;
    if (!now) return;
    if (now.kind === 'pan') {
      pan(event.clientX - now.x, event.clientY - now.y);
      drag.current = { kind: 'pan', x: event.clientX, y: event.clientY };
      return;
    }
    const at = placeOf(event);
    if (now.kind === 'pull') {
      const view = viewOf(now.key);
      const shown = view && shownBox(view);
      if (shown) setGhost({ box: pulled(shown, now.corner, at), xs: [], ys: [], dx: 0, dy: 0 });
      return;
    }
    const box = boxOf(now.hit);
    const [dx, dy] = [at.x - now.from.x, at.y - now.from.y];
    if (!box || (!ghost && Math.hypot(dx, dy) * camera.scale < STILL_px)) return;
    const text = dimensionOf(now.hit);
    if (text) {
      const by = event.altKey ? { dx, dy } : snapText(text, dx, dy, TEXT_REACH_px / camera.scale);
      setGhost({ ...by, xs: [], ys: [], box, corners: cornersOf({ ...text.box, x: text.box.x + by.dx, y: text.box.y + by.dy }) });
      return;
    }
    const others = [viewArea(sheetLayout(sheet.paper)), ...sheet.views.filter(({ key }) => now.hit.kind !== 'view' || key !== now.hit.key).map((view) => view.box)];
    // Held Alt leaves the view where the hand puts it.
    const snapped = event.altKey ? { dx, dy, xs: [], ys: [] } : snapMove(box, dx, dy, others, REACH_px / camera.scale);
    setGhost({ ...snapped, box: { left: box.left + snapped.dx, right: box.right + snapped.dx, top: box.top + snapped.dy, bottom: box.bottom + snapped.dy } });
  };
  const onPointerUp = (): void => {
    const now = drag.current;
    drag.current = null;
    setGhost(null);
    if (!now || !ghost) return;
    if (now.kind === 'move') move(now.hit, ghost.dx, ghost.dy);
    const view = now.kind === 'pull' ? viewOf(now.key) : undefined;
    const part = view && partOf(view, ghost.box);
    if (view && part) commit(placeView(view.key, { crop: { least: { x: part.minX, y: part.minY }, most: { x: part.maxX, y: part.maxY } }, scale: view.scale, at: { x_mm: ghost.box.left, y_mm: ghost.box.top } }));
  };
  const onPointerCancel = (): void => {
    drag.current = null;
    setGhost(null);
  };
  const onDoubleClick = (event: MouseEvent<HTMLDivElement>): void => {
    const hit = hitAt(sheet, placeOf(event));
    if (hit?.kind === 'note') editNote(hit.id);
    const text = hit && dimensionOf(hit);
    if (text?.isByHand) commit(resetDimensionText(text.key));
  };
  /** The texts of dimensions of the chosen view, or of that of the chosen text. */
  const textsBeside = (): PaperHit[] => {
    if (!chosen || chosen.kind === 'note') return [];
    const view = chosen.kind === 'view' ? chosen.key : viewOfDimension(chosen.key);
    return sheet.dimensions.filter(({ key }) => viewOfDimension(key) === view).map(({ key }) => ({ kind: 'dimension', key }));
  };
  const chooseView = (): void => choose(chosen?.kind === 'dimension' ? { kind: 'view', key: viewOfDimension(chosen.key) } : null);
  /** Chooses the next view or note, or the next text of the view whose texts are gone through; false at the end, where the key goes on to what follows. */
  const chooseNext = (by: number): boolean => {
    const isText = chosen?.kind === 'dimension';
    const all: PaperHit[] = isText ? textsBeside() : [...sheet.views.map(({ key }) => ({ kind: 'view' as const, key })), ...sheet.notes.map(({ id }) => ({ kind: 'note' as const, id }))];
    const at = all.findIndex((hit) => JSON.stringify(hit) === JSON.stringify(chosen));
    const next = all[at < 0 ? (by > 0 ? 0 : all.length - 1) : at + by];
    if (next || !isText) choose(next ?? null);
    else chooseView();
    return next !== undefined || isText;
  };
  const act = (event: KeyboardEvent<HTMLDivElement>): boolean => {
    const arrow = ARROWS[event.key];
    if (arrow) {
      const far = event.shiftKey ? 10 : 1;
      if (chosen) move(chosen, arrow[0] * far, arrow[1] * far);
      else pan(-arrow[0] * 40 * far, -arrow[1] * 40 * far);
      return true;
    }
    if (event.key === 'Tab') return chooseNext(event.shiftKey ? -1 : 1);
    if (event.key === 'Delete' || event.key === 'Backspace') {
      if (chosen?.kind === 'note') commit(removeSheetNote(chosen.id));
      else if (chosen) commit(chosen.kind === 'view' ? resetView(chosen.key) : resetDimensionText(chosen.key));
      return true;
    }
    const [firstText] = textsBeside();
    if (event.key === 'Enter' && chosen?.kind === 'note') editNote(chosen.id);
    else if (event.key === 'Enter' && chosen?.kind === 'view' && firstText) choose(firstText);
    else if (event.key === 'PageDown' || event.key === 'PageUp') step(event.key === 'PageDown' ? 1 : -1);
    else if (event.key === '+' || event.key === '-') zoom(event.key === '+' ? 1.25 : 0.8, (field.current?.clientWidth ?? 0) / 2, (field.current?.clientHeight ?? 0) / 2);
    else if (event.key === '0') showWhole();
    else if (event.key === 'n') addNote();
    else if (event.key === 'Escape' && drag.current) onPointerCancel();
    else if (event.key === 'Escape' && chosen) chooseView();
    else if (event.key === 'Escape') close();
    else return false;
    return true;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (!event.ctrlKey && !event.metaKey && act(event)) event.preventDefault();
  };
  return { ghost, handlers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onDoubleClick, onKeyDown } };
}
