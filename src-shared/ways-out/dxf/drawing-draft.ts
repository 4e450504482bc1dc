import { textWidth_mm } from '../../sheets/font-widths.ts';
import { heightText } from '../../sheets/sheet-text.ts';
import type { Mark } from '../../sheets/sheet.ts';
import type { PlanPoint, PlanPoint3 } from '../../geometry/point.ts';
import type { Settings } from '../../model/plan.ts';
import type { DxfBlock, DxfEntity, DxfPlace } from './drawing.ts';
import { type FreeWords, ROW_PITCH, freeWords, placesNear } from './free-words.ts';
import { type LayerKey, layerName } from './layers.ts';

/** Symbols and texts have the size that they have on a print of this scale. */
export const DRAWN_FOR = 50;
/** Height of ordinary text on such a print [mm]. */
const TEXT_mm = 2;
/** Paper of such a print on site [m per mm]. */
export const M_PER_MM = DRAWN_FOR / 1000;
/** Height of ordinary text [m]. */
export const TEXT_m = TEXT_mm * M_PER_MM;
/** Two symbols whose lines differ less than this are one [m]. */
const ALIKE_DIGITS = 7;

/** What a symbol says of the thing that it stands for. */
export interface SymbolFields {
  readonly name: string;
  /** Above the finished floor [m]; null: not known; undefined: it stands on the floor. */
  readonly height_m: number | null | undefined;
  /** How far from the symbol's middle its name stands [m]; null: hidden. */
  readonly nameOff_m: number | null;
}

/** A drawing while it is put together. */
export interface DrawingDraft {
  readonly lengths: Settings['lengths'];
  readonly entities: DxfEntity[];
  readonly blocks: DxfBlock[];
  /** Block by its lines: a symbol that is drawn alike is declared once. */
  readonly known: Map<string, string>;
  readonly words: FreeWords;
}

/** An empty drawing, to which entities and symbols are added. */
export const drawingDraft = (lengths: Settings['lengths']): DrawingDraft => ({ lengths, entities: [], blocks: [], known: new Map(), words: freeWords(M_PER_MM) });

/** A place at a height. */
export const at3 = ({ x, y }: PlanPoint | PlanPoint3, z = 0): DxfPlace => [x, y, z];

/** Draws a run of straight pieces in one plane. */
export function addRun(draft: DrawingDraft, key: LayerKey, places: readonly (PlanPoint | PlanPoint3)[], isClosed: boolean, z = 0): void {
  if (places.length < 2) return;
  draft.entities.push({ kind: 'polyline', layer: layerName(key), places: places.map((p) => at3(p, z)), isClosed });
}

/** Writes a line of text at a place, or as near to it as no other text lies. */
export function addWords(draft: DrawingDraft, key: LayerKey, at: DxfPlace, text: string, options: { readonly height_m?: number; readonly rotation_rad?: number; readonly align?: 'left' | 'middle' | 'right' | 'centre' } = {}): void {
  const words = text.trim();
  if (words === '') return;
  const style = { at, height_m: options.height_m ?? TEXT_m, rotation_rad: options.rotation_rad ?? 0, align: options.align ?? 'left' } as const;
  const free = draft.words.take([words], style, placesNear(style, textWidth_mm(words, style.height_m, 'plain')));
  draft.entities.push({ kind: 'text', layer: layerName(key), ...style, at: free, text: words });
}

const rounded = (value: number): number => Number(value.toFixed(ALIKE_DIGITS)) + 0;

/** A sheet's symbol about the origin as lines of a block: paper's mm, y down, become metres, y up. Areas keep their outline; a triangle of ink is filled. */
export function symbolLines(marks: readonly Mark[], mPerMm = M_PER_MM): DxfEntity[] {
  const places = (list: readonly number[]): DxfPlace[] => {
    const out: DxfPlace[] = [];
    for (let i = 0; i + 1 < list.length; i += 2) out.push([rounded((list[i] ?? 0) * mPerMm), rounded(-(list[i + 1] ?? 0) * mPerMm), 0]);
    return out;
  };
  return marks.flatMap((mark): DxfEntity[] => {
    if (mark.kind === 'circle') return [{ kind: 'circle', layer: '0', at: [rounded(mark.x * mPerMm), rounded(-mark.y * mPerMm), 0], radius_m: rounded(mark.radius_mm * mPerMm) }];
    if (mark.kind !== 'line') return [];
    const run = places(mark.places);
    const [a, b, c] = run;
    const isInk = mark.fill !== undefined && mark.fill === mark.stroke.colour;
    if (isInk && run.length === 3 && a && b && c) return [{ kind: 'fill', layer: '0', places: [a, b, c] }];
    return [{ kind: 'polyline', layer: '0', places: run, isClosed: mark.closed ?? false }];
  });
}

const FIELDS: DxfBlock['fields'] = [
  { tag: 'NAME', asks: 'Name' },
  { tag: 'HEIGHT', asks: 'Height above the finished floor' },
];

/** The name of the block with these lines: symbols drawn alike share one, another one of the same name is numbered. */
function blockOf(draft: DrawingDraft, name: string, lines: readonly DxfEntity[]): string {
  const drawn = `${name} ${JSON.stringify(lines)}`;
  const known = draft.known.get(drawn);
  if (known !== undefined) return known;
  const alike = draft.blocks.filter((each) => each.name === name || each.name.startsWith(`${name} `)).length;
  const block = alike === 0 ? name : `${name} ${alike + 1}`;
  draft.known.set(drawn, block);
  draft.blocks.push({ name: block, entities: lines, fields: FIELDS });
  return block;
}

/** Directions from a symbol in which its name may stand. */
const NAME_WAYS_rad = [1, 7, 3, 5, 0, 4, 2, 6].map((eighths) => (eighths * Math.PI) / 4);

/**
 * Puts a symbol at a place.
 * @param turn_rad  how far its lines are turned
 */
export function addSymbol(draft: DrawingDraft, key: LayerKey, name: string, lines: readonly DxfEntity[], at: PlanPoint, turn_rad: number, { name: words, height_m, nameOff_m }: SymbolFields): void {
  const z = height_m ?? 0;
  const height = height_m === undefined ? '' : height_m === null ? 'height not known' : heightText(height_m, draft.lengths);
  const rows = [words, height].filter((row) => row !== '');
  const wide = Math.max(0, ...rows.map((row) => textWidth_mm(row, TEXT_m, 'plain')));
  const style = { at: at3(at, z), height_m: TEXT_m, rotation_rad: 0, align: 'left' } as const;
  const around = (off_m: number): DxfPlace[] =>
    [1, 1.6, 2.4, 3.4].flatMap((far) =>
      NAME_WAYS_rad.map((way): DxfPlace => [at.x + Math.cos(way) * off_m * far - (Math.cos(way) < -0.1 ? wide : Math.abs(Math.cos(way)) < 0.1 ? wide / 2 : 0), at.y + Math.sin(way) * off_m * far + (Math.sin(way) > 0.1 ? TEXT_m : 0), z]),
    );
  const [x, y] = nameOff_m === null ? style.at : draft.words.take(rows, style, around(nameOff_m));
  const field = (tag: string, text: string, row: number) => ({ ...style, tag, text, at: [x, y - row * TEXT_m * ROW_PITCH, z] as const, isHidden: nameOff_m === null || text === '' });
  draft.entities.push({ kind: 'insert', layer: layerName(key), block: blockOf(draft, name, lines), at: at3(at, z), rotation_rad: turn_rad, attributes: [field('NAME', words, 0), field('HEIGHT', height, 1)] });
}
