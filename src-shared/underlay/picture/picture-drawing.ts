import { type ReadProgress, type UnderlayDrawing, type UnderlayImage, UnderlayProblem } from '../drawing.ts';
import { DrawingBuilder } from '../drawing-builder.ts';
import { orientationMatrix, seenSize } from './exif-orientation.ts';

/** Most pixels of a picture: unpacked they take four bytes each, here and on the board. */
export const MOST_PIXELS = 100_000_000;
const LONGEST_SIDE_px = 30_000;

/** What the head of a picture file says. */
export interface PictureHead {
  readonly mime: UnderlayImage['mime'];
  /** Stored pixels. */
  readonly width: number;
  readonly height: number;
  /** Exif orientation, 1 … 8. */
  readonly orientation: number;
  /** Pixels per inch of paper when the file says so. */
  readonly perInch: number | undefined;
}

/** A picture file that stops before its end. */
export const cutPicture = (): UnderlayProblem =>
  new UnderlayProblem('The picture ends in the middle: a part of the plan is lost.', '', 'Copy or download the file again.');

/** A picture file that contradicts itself. */
export const damagedPicture = (where: string): UnderlayProblem =>
  new UnderlayProblem('The picture is damaged.', where, 'Open it in a picture program, save it again as PNG, and import that.');

/**
 * Refuses a picture that cannot be held.
 * @throws {UnderlayProblem} when it has no size, or unpacks into more than a computer holds well
 */
export function checkPictureSize(width: number, height: number): void {
  if (width < 1 || height < 1) throw damagedPicture('its size is missing');
  if (width * height > MOST_PIXELS || Math.max(width, height) > LONGEST_SIDE_px) {
    throw new UnderlayProblem(
      `The picture is ${width} × ${height} pixels large, more than ${MOST_PIXELS / 1e6} million pixels or ${LONGEST_SIDE_px} on a side.`,
      '',
      'Scan it at 200 dots per inch, or make it smaller in a picture program, and import that.',
    );
  }
}

/** Most bytes that the pixels of a picture may unpack into: printing it checks them all, in bounded memory. */
const MOST_UNPACKED_bytes = 400_000_000;
/** The same where printing must take the pixels apart, which takes about four times as much: see-through or interlaced ones. */
const MOST_TAKEN_APART_bytes = 180_000_000;

/**
 * Refuses a picture that could be shown but not printed in bounded memory.
 * @param isPlain  neither see-through anywhere nor interlaced
 * @throws {UnderlayProblem} when its pixels unpack into too much
 */
export function checkUnpackedSize(unpacked_bytes: number, isPlain: boolean): void {
  const most_bytes = isPlain ? MOST_UNPACKED_bytes : MOST_TAKEN_APART_bytes;
  if (unpacked_bytes <= most_bytes) return;
  throw new UnderlayProblem(
    `The picture unpacks into ${Math.round(unpacked_bytes / 1e6)} MB, more than the ${most_bytes / 1e6} MB that can be printed.`,
    '',
    isPlain ? 'Save it with 8 bits a colour, or make it smaller in a picture program, and import that.' : 'Save it without see-through parts and not interlaced, or make it smaller in a picture program, and import that.',
  );
}

/** A drawing that is one picture: a file unit is a pixel as seen, the origin the lower left corner, y up. */
export function pictureDrawing(kind: 'png' | 'jpeg', head: PictureHead, bytes: Uint8Array, progress: ReadProgress): UnderlayDrawing {
  const { mime, width, height, orientation, perInch } = head;
  const builder = new DrawingBuilder(kind);
  builder.addImage({ mime, bytes, width, height, matrix: orientationMatrix(width, height, orientation) });
  const seen = seenSize(width, height, orientation);
  const paper = perInch === undefined ? '' : `, ${Math.round(perInch)} per inch of paper, which says nothing of the site`;
  return builder.finish({ metresPerUnit: null, unitsText: `pixels (${seen.width} × ${seen.height}${paper})`, pageCount: 1 }, progress);
}
