/** One group code and its value. */
export type Pair = readonly [code: number, value: string | number];

/** An entity's pairs, the type first: `entity('LINE', [8, 'Walls'], [10, 0] …)`. */
export const entity = (type: string, ...pairs: Pair[]): Pair[] => [[0, type], ...pairs];

export const line = (x1: number, y1: number, x2: number, y2: number, layer = '0', ...more: Pair[]): Pair[] =>
  entity('LINE', [8, layer], [10, x1], [20, y1], [30, 0], [11, x2], [21, y2], [31, 0], ...more);

export const insert = (block: string, x: number, y: number, layer = '0', ...more: Pair[]): Pair[] =>
  entity('INSERT', [8, layer], [2, block], [10, x], [20, y], [30, 0], ...more);

/** A closed light polyline without bulges. */
export const ring = (corners: readonly (readonly [number, number])[], layer = '0', ...more: Pair[]): Pair[] =>
  entity('LWPOLYLINE', [8, layer], [90, corners.length], [70, 1], ...more, ...corners.flatMap(([x, y]): Pair[] => [[10, x], [20, y]]));

export interface DxfParts {
  /** Header variables: name and its pairs. */
  readonly header?: readonly (readonly [name: string, ...pairs: Pair[]])[];
  readonly layers?: readonly { readonly name: string; readonly colour?: number; readonly flags?: number; readonly trueColour?: number }[];
  readonly blocks?: readonly { readonly name: string; readonly base?: readonly [number, number]; readonly flags?: number; readonly entities: readonly Pair[][] }[];
  readonly entities?: readonly Pair[][];
  /** Leaves the end mark out. */
  readonly isCut?: boolean;
}

/** Text of a DXF file with the sections in their usual order. */
export function dxfText({ header = [], layers = [], blocks = [], entities = [], isCut = false }: DxfParts): string {
  const rows: string[] = [];
  const put = (code: number, value: string | number): void => void rows.push(String(code).padStart(3), String(value));
  const section = (name: string, body: () => void): void => {
    put(0, 'SECTION');
    put(2, name);
    body();
    put(0, 'ENDSEC');
  };
  const putAll = (groups: readonly Pair[][]): void => {
    for (const group of groups) for (const [code, value] of group) put(code, value);
  };
  section('HEADER', () => {
    for (const [name, ...pairs] of [['$ACADVER', [1, 'AC1015']] as const, ...header]) {
      put(9, name);
      for (const [code, value] of pairs) put(code, value);
    }
  });
  section('TABLES', () => {
    put(0, 'TABLE');
    put(2, 'LAYER');
    put(70, layers.length);
    for (const { name, colour = 7, flags = 0, trueColour } of layers) {
      putAll([entity('LAYER', [2, name], [70, flags], [62, colour], [6, 'CONTINUOUS'])]);
      if (trueColour !== undefined) put(420, trueColour);
    }
    put(0, 'ENDTAB');
  });
  section('BLOCKS', () => {
    for (const { name, base = [0, 0], flags = 0, entities: inside } of blocks) {
      putAll([entity('BLOCK', [8, '0'], [2, name], [70, flags], [10, base[0]], [20, base[1]], [30, 0], [3, name])]);
      putAll(inside);
      putAll([entity('ENDBLK', [8, '0'])]);
    }
  });
  section('ENTITIES', () => putAll(entities));
  if (!isCut) put(0, 'EOF');
  return `${rows.join('\r\n')}\r\n`;
}

/** The same as bytes, one byte a character. */
export const dxfBytes = (parts: DxfParts): Uint8Array => new Uint8Array(Buffer.from(dxfText(parts), 'latin1'));
