/** An invented floor plan as plain lines and words, in metres, before it becomes a PNG, DXF or PDF. */
export interface FloorDrawing {
  readonly width_m: number;
  readonly depth_m: number;
  /** Lines by layer name, each a run of places; `closed` joins the last to the first. */
  readonly layers: Readonly<Record<string, readonly FloorLine[]>>;
  readonly words: readonly { readonly x: number; readonly y: number; readonly height_m: number; readonly text: string }[];
}

export interface FloorLine {
  readonly places: readonly (readonly [x: number, y: number])[];
  readonly closed: boolean;
}

/** Feet and inches in metres, exactly. */
export const ft = (feet: number, inches = 0): number => (feet * 12 + inches) * 0.0254;

/** A closed rectangle from its lower left to its upper right corner. */
export const boxLine = (x0: number, y0: number, x1: number, y1: number): FloorLine => ({
  places: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
});

/** An open line through places. */
export const openLine = (...places: [number, number][]): FloorLine => ({ places, closed: false });

/** A quarter circle of a door leaf about its hinge, as twelve straight pieces. */
export const swingLine = (hingeX: number, hingeY: number, width_m: number, from_rad: number, to_rad: number): FloorLine => ({
  places: [
    [hingeX, hingeY],
    ...Array.from({ length: 13 }, (_, i): [number, number] => {
      const angle_rad = from_rad + ((to_rad - from_rad) * i) / 12;
      return [hingeX + width_m * Math.cos(angle_rad), hingeY + width_m * Math.sin(angle_rad)];
    }),
  ],
  closed: false,
});
