import type { Host, KeptAsset, Problem } from '#shared/host/contract';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { followJob } from '../host/follow-job.ts';
import { problemText } from '../plan-words.ts';

/** Largest picture from a camera that is taken in [bytes]. */
export const LARGEST_PICTURE_bytes = 20 * 1024 * 1024;

export interface PickedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A picture that the host has checked and keeps. */
export interface ReadPicture {
  readonly asset: KeptAsset;
  readonly drawing: UnderlayDrawing;
}

type Reading = { readonly ok: true; readonly picture: ReadPicture } | { readonly ok: false; readonly why: string };

async function readOne(host: Host, { name, bytes }: PickedFile, signal: AbortSignal): Promise<Reading> {
  // What is no floor plan either is told as a photograph that cannot be read.
  const fault = (problem: Problem): Reading => ({ ok: false, why: problem.code === 'unsupported' || problem.code === 'unreadable' ? `“${name}” cannot be read as a photograph. Choose a PNG or JPEG file.` : problemText(problem) });
  if (bytes.length > LARGEST_PICTURE_bytes) return { ok: false, why: `“${name}” is larger than 20 MB. Save it smaller, then choose it again.` };
  if (!/\.(png|jpe?g)$/i.test(name)) return { ok: false, why: `“${name}” is no photograph. Choose a PNG or JPEG file.` };
  const begun = await host.importUnderlay({ name, bytes });
  if (!begun.ok) return fault(begun.problem);
  const done = await followJob(host, begun.value.job, () => undefined, signal);
  if (!done.ok) return fault(done.problem);
  const result = await host.underlayResult({ job: begun.value.job });
  if (!result.ok) return fault(result.problem);
  const drawing = decodeDrawing(result.value.bytes);
  const isPicture = (drawing.kind === 'png' || drawing.kind === 'jpeg') && drawing.images.length > 0;
  return isPicture ? { ok: true, picture: { asset: begun.value.asset, drawing } } : { ok: false, why: `“${name}” is no photograph. Choose a PNG or JPEG file.` };
}

/** Has the host check pictures and keep them: those that are sound, and of each other one why not. */
export async function readPictures(host: Host, files: readonly PickedFile[], signal: AbortSignal): Promise<{ readonly pictures: readonly ReadPicture[]; readonly faults: readonly string[] }> {
  const pictures: ReadPicture[] = [];
  const faults: string[] = [];
  for (const file of files) {
    if (signal.aborted) break;
    const reading = await readOne(host, file, signal);
    if (reading.ok) pictures.push(reading.picture);
    else faults.push(reading.why);
  }
  return { pictures, faults };
}
