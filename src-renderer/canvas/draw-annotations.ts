import { refKey } from '#shared/model/plan';
import { formatLength } from '#shared/units/length-text';
import { wrapped } from './lettering.ts';
import type { Pen } from './pen.ts';
import { type Scene, shownLevelOf } from './scene.ts';
import { drawDimension } from './symbols/dimension-line.ts';
import { NOTE_WIDTH_px, drawNote } from './symbols/note-mark.ts';
import { type Viewport, toScreen } from './viewport.ts';

/** Dimensions that the user set. */
export function drawDimensions(pen: Pen, view: Viewport, scene: Scene): void {
  const level = shownLevelOf(scene);
  for (const { id, a, b, offset_m } of Object.values(level?.dimensions ?? {})) {
    if (!scene.shows(refKey({ kind: 'dimension', level: scene.level, id }))) continue;
    const length_m = Math.hypot(b.x - a.x, b.y - a.y);
    drawDimension(pen, toScreen(view, a), toScreen(view, b), formatLength(length_m, scene.lengths), {
      colour: scene.ink.ink,
      paper: scene.ink.paper,
      offset_px: offset_m * view.camera.scale_px_m,
    });
  }
}

/** Notes that the user wrote. */
export function drawNotes(pen: Pen, view: Viewport, scene: Scene): void {
  const level = shownLevelOf(scene);
  for (const { id, at, text } of Object.values(level?.notes ?? {})) {
    if (!scene.shows(refKey({ kind: 'note', level: scene.level, id }))) continue;
    drawNote(pen, toScreen(view, at), wrapped(pen, text, NOTE_WIDTH_px), scene.ink.ink, scene.ink.paper);
  }
}
