import type { Mark, Stroke } from '#shared/sheets/sheet';

/** Marks that are plain line work; texts, pictures and cut parts need the document itself. */
export type LineMark = Exclude<Mark, { kind: 'text' | 'image' | 'clip' }>;

/** Writes line work as page operators and keeps track of pen and fill, so that neither is set twice. */
export interface SheetPen {
  draw(mark: LineMark): void;
  fillRing(places: ArrayLike<number>, colour: string): void;
  fillWith(colour: string): void;
}

/** How far the control points of a quarter circle stand from its ends, over the radius. */
const QUARTER = (4 / 3) * Math.tan(Math.PI / 8);

/** A number of the page: to a ten-thousandth of a millimetre, never with an exponent. */
const figure = (value: number): string => {
  const rounded = Math.round(value * 1e4) / 1e4;
  if (!Number.isFinite(rounded) || Math.abs(rounded) > 1e7) throw new RangeError(`A mark lies outside every paper (${value} mm).`);
  return rounded === 0 ? '0' : String(rounded);
};

const colourOperators = (colour: string): string => {
  const parts = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  return parts.map((part) => String(Math.round((Number.isFinite(part) ? part : 0) * 1000) / 1000)).join(' ');
};

function path(places: ArrayLike<number>, isClosed: boolean): string {
  const out: string[] = [];
  for (let i = 0; i + 1 < places.length; i += 2) out.push(`${figure(places[i] ?? 0)} ${figure(places[i + 1] ?? 0)} ${i === 0 ? 'm' : 'l'}`);
  if (isClosed) out.push('h');
  return out.join('\n');
}

/** An arc as curves of at most a quarter turn; angles counter-clockwise as seen on paper. */
function arcPath(x: number, y: number, radius: number, from_rad: number, to_rad: number): string {
  const pieces = Math.max(1, Math.ceil(Math.abs(to_rad - from_rad) / (Math.PI / 2) - 1e-9));
  const step = (to_rad - from_rad) / pieces;
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  const out = [`${figure(x + Math.cos(from_rad) * radius)} ${figure(y - Math.sin(from_rad) * radius)} m`];
  for (let i = 0; i < pieces; i += 1) {
    const a = from_rad + i * step;
    const b = a + step;
    const [ax, ay] = [x + Math.cos(a) * radius, y - Math.sin(a) * radius];
    const [bx, by] = [x + Math.cos(b) * radius, y - Math.sin(b) * radius];
    const control = [ax - Math.sin(a) * reach, ay - Math.cos(a) * reach, bx + Math.sin(b) * reach, by + Math.cos(b) * reach, bx, by];
    out.push(`${control.map(figure).join(' ')} c`);
  }
  return out.join('\n');
}

function circlePath(x: number, y: number, r: number): string {
  const k = r * QUARTER;
  const curve = (...places: number[]): string => `${places.map(figure).join(' ')} c`;
  return [
    `${figure(x + r)} ${figure(y)} m`,
    curve(x + r, y + k, x + k, y + r, x, y + r),
    curve(x - k, y + r, x - r, y + k, x - r, y),
    curve(x - r, y - k, x - k, y - r, x, y - r),
    curve(x + k, y - r, x + r, y - k, x + r, y),
    'h',
  ].join('\n');
}

/** Pieces in one path: short enough for every viewer, long enough to keep the file small. */
const PIECES_PER_PATH = 2000;

/** A pen that writes through `emit`; nothing is known of the page's state before. */
export function sheetPen(emit: (operators: string) => void): SheetPen {
  let stroke = '';
  let fill = '';
  const strokeWith = ({ width_mm, colour, dash_mm }: Stroke): void => {
    const operators = `${figure(width_mm)} w [${(dash_mm ?? []).map(figure).join(' ')}] 0 d ${colourOperators(colour)} RG 1 j`;
    if (operators !== stroke) emit(operators);
    stroke = operators;
  };
  const fillWith = (colour: string): void => {
    const operators = `${colourOperators(colour)} rg`;
    if (operators !== fill) emit(operators);
    fill = operators;
  };
  const shape = (outline: string, border: Stroke | undefined, inside: string | undefined): void => {
    if (border) strokeWith(border);
    if (inside) fillWith(inside);
    emit(`${outline}\n${border ? (inside ? 'B' : 'S') : 'f'}`);
  };
  return {
    fillWith,
    fillRing(places, colour) {
      shape(path(places, true), undefined, colour);
    },
    draw(mark) {
      switch (mark.kind) {
        case 'line':
          return shape(path(mark.places, mark.closed ?? false), mark.stroke, mark.fill);
        case 'segments': {
          strokeWith(mark.stroke);
          const pieces: string[] = [];
          for (let i = 0; i + 3 < mark.places.length; i += 4) {
            const [ax = 0, ay = 0, bx = 0, by = 0] = [mark.places[i], mark.places[i + 1], mark.places[i + 2], mark.places[i + 3]];
            pieces.push(`${figure(ax)} ${figure(ay)} m ${figure(bx)} ${figure(by)} l`);
            if (pieces.length === PIECES_PER_PATH) emit(`${pieces.splice(0).join('\n')}\nS`);
          }
          if (pieces.length > 0) emit(`${pieces.join('\n')}\nS`);
          return;
        }
        case 'circle':
          return shape(circlePath(mark.x, mark.y, mark.radius_mm), mark.stroke, mark.fill);
        case 'arc':
          return shape(arcPath(mark.x, mark.y, mark.radius_mm, mark.from_rad, mark.to_rad), mark.stroke, undefined);
        case 'area':
          fillWith(mark.fill);
          return emit(`${mark.rings.map((ring) => path(ring, true)).join('\n')}\nf*`);
      }
    },
  };
}
