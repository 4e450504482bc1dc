import type { Evaluation } from '#shared/evaluate';
import type { PlanContent } from '#shared/sheets/plan-content';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { planViewDrawing } from '#shared/ways-out/svg/plan-view-svg';
import { type WayOutKind, type WayOutOptions, packWayOut, wayOutFiles, wayOutName } from '#shared/ways-out/way-out-files';
import { paintableDpi, pictureOfView } from './picture-of-view.ts';

/** What a plan can be saved as from the window. */
export type SavedKind = WayOutKind | 'png';

export interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly type: string;
}

const TYPES: Readonly<Record<SavedKind | 'zip', string>> = {
  dxf: 'image/vnd.dxf',
  svg: 'image/svg+xml',
  png: 'image/png',
  csv: 'text/csv',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  zip: 'application/zip',
};

/** How far the making of files is; it may ask to stop. */
export interface MakingWatch {
  readonly signal: AbortSignal;
  tell(done: number, doing: string): void;
}

/** Lets the window paint and hear a press between two files. */
const breathe = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/**
 * Makes the file that is saved: the only one, or all of them packed in one.
 * @returns null when it was stopped, or nothing is drawn
 */
export async function makeWayOut(evaluation: Evaluation, plan: string, kind: SavedKind, dpi: number, options: WayOutOptions & { readonly views: readonly PlanContent[] }, watch: MakingWatch): Promise<MadeFile | null> {
  const files: { of: string; kind: SavedKind; bytes: Uint8Array }[] = [];
  const count = kind === 'xlsx' ? 1 : kind === 'csv' ? 15 : options.views.length;
  const made = kind === 'png' ? pictures(evaluation, options.views, options.drawings ?? new Map(), dpi) : wayOutFiles(evaluation, kind, options);
  watch.tell(0, '');
  await breathe();
  for await (const file of made) {
    if (watch.signal.aborted) return null;
    files.push(file);
    watch.tell(Math.min(1, files.length / count), file.of);
    await breathe();
    if (watch.signal.aborted) return null;
  }
  const [only] = files;
  if (!only) return null;
  if (files.length === 1) return { name: wayOutName(plan, only), bytes: only.bytes, type: TYPES[kind] };
  return { name: wayOutName(plan, { of: kind === 'csv' ? 'tables' : 'views', kind: 'zip' }), bytes: packWayOut(plan, files), type: TYPES.zip };
}

async function* pictures(evaluation: Evaluation, views: readonly PlanContent[], drawings: ReadonlyMap<string, UnderlayDrawing>, dpi: number) {
  for (const content of views) {
    const drawing = planViewDrawing(evaluation, content, drawings);
    const bytes = drawing && (await pictureOfView(drawing, paintableDpi(drawing, dpi)));
    if (bytes) yield { of: content.title, kind: 'png' as const, bytes };
  }
}
