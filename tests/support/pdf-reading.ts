import { OPS, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A straight piece on the page [mm], from its top left corner, y down, with the colour and width it is stroked in. */
export interface ReadPiece {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly width_mm: number;
}
export interface ReadPage {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly texts: readonly string[];
  readonly pieces: readonly ReadPiece[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM_PER_POINT = 25.4 / 72;
const MOVE = 0;
const LINE = 1;
const CURVE = 2;
const CLOSE = 4;

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];

/** Reads every page of a PDF back with pdf.js: texts, and stroked straight pieces at their true place. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let index = 1; index <= document.numPages; index += 1) {
    const page = await document.getPage(index);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item) => ('str' in item && item.str !== '' ? [item.str] : []));
    const { fnArray, argsArray } = await page.getOperatorList();
    let matrix: Matrix = [1, 0, 0, 1, 0, 0];
    let width = 1;
    const stack: [Matrix, number][] = [];
    const pieces: ReadPiece[] = [];
    fnArray.forEach((operator, i) => {
      const args = argsArray[i] ?? [];
      if (operator === OPS.save) stack.push([matrix, width]);
      else if (operator === OPS.restore) [matrix, width] = stack.pop() ?? [matrix, width];
      else if (operator === OPS.transform) matrix = times(matrix, args as Matrix);
      else if (operator === OPS.setLineWidth) [width] = args;
      else if (operator === OPS.constructPath && [OPS.stroke, OPS.fillStroke, OPS.closeStroke].includes(args[0])) {
        const scale = Math.hypot(matrix[0], matrix[1]) * MM_PER_POINT;
        for (const piece of straightPieces(args[1]?.[0] ?? [], matrix, bottom, top, left)) pieces.push({ ...piece, width_mm: width * scale });
      }
    });
    pages.push({ width_mm: (right - left) * MM_PER_POINT, height_mm: (top - bottom) * MM_PER_POINT, texts, pieces });
  }
  await task.destroy();
  return pages;
}

function straightPieces(data: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, bottom: number, top: number, left: number): Omit<ReadPiece, 'width_mm'>[] {
  const out: Omit<ReadPiece, 'width_mm'>[] = [];
  const at = (i: number): readonly [number, number] => {
    const [x = 0, y = 0] = [data[i], data[i + 1]];
    return [(a * x + c * y + e - left) * MM_PER_POINT, (top - bottom - (b * x + d * y + f - bottom)) * MM_PER_POINT];
  };
  let start: readonly [number, number] = [0, 0];
  let current: readonly [number, number] = [0, 0];
  const to = (next: readonly [number, number]): void => {
    out.push({ ax: current[0], ay: current[1], bx: next[0], by: next[1] });
    current = next;
  };
  for (let i = 0; i < data.length; ) {
    const operator = data[i];
    if (operator === MOVE) {
      start = at(i + 1);
      current = start;
      i += 3;
    } else if (operator === LINE) {
      to(at(i + 1));
      i += 3;
    } else if (operator === CURVE) {
      current = at(i + 5);
      i += 7;
    } else if (operator === CLOSE) {
      to(start);
      i += 1;
    } else throw new Error(`Unknown path operator ${operator}.`);
  }
  return out;
}

/** Length of a piece [mm]. */
export const lengthOf = ({ ax, ay, bx, by }: ReadPiece): number => Math.hypot(bx - ax, by - ay);
