import type { ImportReport } from '#shared/host/contract';
import { type ReadProgress, UnderlayProblem } from '#shared/underlay/drawing';
import { encodeDrawing } from '#shared/underlay/encode-drawing';
import { importReportOf } from './import-report.ts';
import { readUnderlay } from './read-underlay.ts';

/** A floor plan that was read: what it is, and its drawing as `encodeDrawing` packs it. */
export interface Imported {
  readonly report: ImportReport;
  readonly packed: Uint8Array;
}

/** Which page of which file, the name for messages only. */
export interface ImportOptions {
  readonly name: string;
  readonly page: number;
}

/** Reads and packs a floor plan in the calling thread. @throws {UnderlayProblem} for anything a file can do wrong */
export async function readAndPack(bytes: Uint8Array, options: ImportOptions, progress: ReadProgress): Promise<Imported> {
  const drawing = await readUnderlay(bytes, options, progress);
  progress(1, 'Packing the drawing');
  return { report: importReportOf(drawing), packed: encodeDrawing(drawing) };
}

/** The problem a thrown thing stands for; trouble that no reader foresaw is told, too. */
export function underlayProblemOf(error: unknown, name: string): UnderlayProblem {
  if (error instanceof UnderlayProblem) return error.where === '' ? new UnderlayProblem(error.what, name, error.remedy) : error;
  const message = error instanceof Error ? error.message : String(error);
  return new UnderlayProblem('The floor plan could not be read.', `${name}: ${message.slice(0, 200)}`, 'Export it again, or in another of the formats DXF, PDF, SVG, PNG.');
}
