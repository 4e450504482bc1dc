/** Colours on paper. Each reads as a distinct grey in a mono print, and none carries a meaning alone. */
export const PRINT = {
  ink: '#16191c',
  quiet: '#474d53',
  faint: '#8b9298',
  underlay: '#aeb4b8',
  paper: '#ffffff',
  /** High-pressure side: also a double line. */
  warm: '#8f3a08',
  /** Low-pressure side: also a single line. */
  cool: '#0b4777',
  /** Things that stand or hang in the room. */
  solid: '#5d5347',
  solidFill: '#f3f1ed',
  /** Sample stamp under the drawing. */
  stamp: '#e6dcd6',
  tableBand: '#f1f2f0',
} as const;

/** Line widths on paper [mm], of the series of ISO 128 (from memory). */
export const WEIGHT = { hair: 0.18, thin: 0.25, medium: 0.35, wide: 0.5, heavy: 0.7 } as const;
