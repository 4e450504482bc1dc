import type { DecodeText } from '#shared/underlay/decode-text';
import type { ReadProgress, UnderlayDrawing, UnderlayLayer } from '#shared/underlay/drawing';
import { UnderlayProblem } from '#shared/underlay/drawing';
import { readDxf } from '#shared/underlay/dxf/read-dxf';
import { readSvg } from '#shared/underlay/svg/read-svg';
import { decodeText } from '../../src-main/services/underlay/decode-text.ts';
import { type DxfParts, type Pair, dxfBytes } from './dxf-file.ts';

export const decode: DecodeText = decodeText;
export const quiet: ReadProgress = () => undefined;

/** Reads a DXF file made of parts. */
export const readParts = (parts: DxfParts): UnderlayDrawing => readDxf(dxfBytes(parts), decode, quiet);
/** Reads a DXF file that holds only these entities. */
export const readEntities = (...entities: Pair[][]): UnderlayDrawing => readParts({ entities });
/** Reads SVG text. */
export const readSvgText = (text: string): UnderlayDrawing => readSvg(new TextEncoder().encode(text), decode, quiet);

/** The layer of that name; fails when there is none. */
export function layerNamed(drawing: UnderlayDrawing, name: string): UnderlayLayer {
  const found = drawing.layers.find((layer) => layer.name === name);
  if (!found) throw new Error(`no layer ${name} among ${drawing.layers.map((layer) => layer.name).join(', ')}`);
  return found;
}

/** All straight pieces of a drawing, four numbers each, as plain rows. */
export const piecesOf = (drawing: Pick<UnderlayDrawing, 'layers'>): number[][] => {
  const rows: number[][] = [];
  for (const { segments } of drawing.layers) for (let i = 0; i < segments.length; i += 4) rows.push([...segments.subarray(i, i + 4)]);
  return rows;
};

/** All corners of the pieces of a drawing, x and y. */
export const placesOf = (drawing: Pick<UnderlayDrawing, 'layers'>): [number, number][] =>
  piecesOf(drawing).flatMap(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]): [number, number][] => [
    [x1, y1],
    [x2, y2],
  ]);

/** All texts of a drawing. */
export const textsOf = (drawing: UnderlayDrawing): string[] => drawing.layers.flatMap(({ texts }) => texts.map(({ text }) => text));

/** Whether a piece between two places is there, either way round. */
export const hasPiece = (drawing: Pick<UnderlayDrawing, 'layers'>, x1: number, y1: number, x2: number, y2: number, slack = 1e-9): boolean =>
  piecesOf(drawing).some(([a = 0, b = 0, c = 0, d = 0]) => {
    const near = (...pairs: [number, number][]): boolean => pairs.every(([p, q]) => Math.abs(p - q) <= slack);
    return near([a, x1], [b, y1], [c, x2], [d, y2]) || near([a, x2], [b, y2], [c, x1], [d, y1]);
  });

/** The problem that a piece of work ends with; fails when it does not end with one. */
export function problemOf(work: () => unknown): UnderlayProblem {
  try {
    work();
  } catch (error) {
    if (error instanceof UnderlayProblem) return error;
    throw error;
  }
  throw new Error('no problem was found');
}

/** The same for work that takes time. */
export async function problemIn(work: Promise<unknown>): Promise<UnderlayProblem> {
  const outcome = await work.then(
    () => undefined,
    (error: unknown) => error,
  );
  if (outcome instanceof UnderlayProblem) return outcome;
  throw outcome ?? new Error('no problem was found');
}
