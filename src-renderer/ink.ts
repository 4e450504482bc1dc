import type { Verdict } from '#shared/rules/finding';

/** Colours of one ground. Colour is for meaning and never alone: every meaning has a mark or a line style as well. */
export interface Ink {
  /** Window behind the panels. */
  readonly ground: string;
  /** The board itself. */
  readonly paper: string;
  readonly panel: string;
  /** Lines between panels and of tables. */
  readonly rule: string;
  readonly ink: string;
  readonly quiet: string;
  /** Imported floor plan and grid. */
  readonly underlay: string;
  readonly grid: string;
  readonly wall: string;
  readonly solid: string;
  /** High-pressure side of the regulator. */
  readonly warm: string;
  /** Low-pressure side. */
  readonly cool: string;
  readonly selection: string;
  readonly snap: string;
  readonly verdict: Readonly<Record<Verdict, string>>;
}

/** Graphite on paper-white. */
export const LIGHT_INK: Ink = {
  ground: '#e9eae6',
  paper: '#fdfdfb',
  panel: '#f5f5f1',
  rule: '#c9ccc8',
  ink: '#1f2428',
  quiet: '#59626a',
  underlay: '#5d666d',
  grid: '#e6e8e4',
  wall: '#30363b',
  solid: '#6d6254',
  warm: '#b0480c',
  cool: '#0f639c',
  selection: '#b8157f',
  snap: '#0a7d62',
  verdict: { stop: '#b90009', warn: '#796100', note: '#202c3a', 'not-checked': '#6e41b7', ok: '#007757' },
};

/** Chalk on slate. */
export const DARK_INK: Ink = {
  ground: '#15191d',
  paper: '#1d2227',
  panel: '#232a30',
  rule: '#3b444c',
  ink: '#e8ebe8',
  quiet: '#a5afb7',
  underlay: '#77828b',
  grid: '#282f35',
  wall: '#d5dad8',
  solid: '#b3a58f',
  warm: '#f0935a',
  cool: '#6cb8ec',
  selection: '#ff85d8',
  snap: '#4fd6b0',
  verdict: { stop: '#ff6456', warn: '#ffe188', note: '#dde8f4', 'not-checked': '#978bff', ok: '#44b799' },
};
