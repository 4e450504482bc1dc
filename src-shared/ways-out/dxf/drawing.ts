/** A place [m]: x east, y north, z above the finished floor. */
export type DxfPlace = readonly [x: number, y: number, z: number];

/** A line of text: its place is the baseline's start, middle or end, or its very middle. */
export interface DxfText {
  readonly at: DxfPlace;
  readonly text: string;
  /** Height of capitals [m]. */
  readonly height_m: number;
  readonly rotation_rad: number;
  readonly align: 'left' | 'middle' | 'right' | 'centre';
}

/** A field of a symbol, filled in. A hidden one is read in the symbol's properties only. */
export interface DxfAttribute extends DxfText {
  readonly tag: string;
  readonly isHidden: boolean;
}

/** One thing of a drawing, in metres and radians counter-clockwise from east. */
export type DxfEntity =
  | { readonly kind: 'line'; readonly layer: string; readonly from: DxfPlace; readonly to: DxfPlace }
  /** Places in one plane at the height of the first; closed ones do not repeat it. */
  | { readonly kind: 'polyline'; readonly layer: string; readonly places: readonly DxfPlace[]; readonly isClosed: boolean }
  | { readonly kind: 'circle'; readonly layer: string; readonly at: DxfPlace; readonly radius_m: number }
  /** Counter-clockwise from one angle to the other. */
  | { readonly kind: 'arc'; readonly layer: string; readonly at: DxfPlace; readonly radius_m: number; readonly from_rad: number; readonly to_rad: number }
  /** A filled triangle. */
  | { readonly kind: 'fill'; readonly layer: string; readonly places: readonly [DxfPlace, DxfPlace, DxfPlace] }
  | ({ readonly kind: 'text'; readonly layer: string } & DxfText)
  | { readonly kind: 'insert'; readonly layer: string; readonly block: string; readonly at: DxfPlace; readonly rotation_rad: number; readonly attributes: readonly DxfAttribute[] }
  /** Distance between two places along the line that joins them. */
  | {
      readonly kind: 'dimension';
      readonly layer: string;
      readonly a: DxfPlace;
      readonly b: DxfPlace;
      /** Of the dimension line from the measured places, left of a → b positive [m]. */
      readonly offset_m: number;
      /** What it names, before the length; blank: the length alone. */
      readonly name: string;
    };

export interface DxfLayer {
  readonly name: string;
  /** Colour by the number of the format, 1 … 255: 7 is the ink of the ground. */
  readonly colour: number;
  /** Hundredths of a millimetre, one of the widths that the format knows. */
  readonly weight: 13 | 18 | 25 | 35 | 50 | 70;
  readonly lineType: DxfLineType;
}

export type DxfLineType = 'Continuous' | 'Dashed' | 'Dotted' | 'Dash and dot';

/** A symbol: drawn about its own origin, on layer 0, so that it takes the layer of what it stands for. */
export interface DxfBlock {
  readonly name: string;
  readonly entities: readonly DxfEntity[];
  /** Fields that each use of it fills in. */
  readonly fields: readonly { readonly tag: string; readonly asks: string }[];
}

/** A drawing as it is written to a DXF file. */
export interface DxfDrawing {
  readonly lengths: 'feet' | 'metric';
  /** Height of ordinary text [m]. */
  readonly text_m: number;
  readonly layers: readonly DxfLayer[];
  readonly blocks: readonly DxfBlock[];
  readonly entities: readonly DxfEntity[];
}
