import { boughtWords } from '#shared/derived/fitting-words';
import { sizeText } from '#shared/sheets/sheet-text';
import type { PipeSize } from '#shared/profile/pipe-table';
import type { MadeFitting } from '#shared/profile/unit-profile';
import { type LengthSystem, formatLength } from '#shared/units/length-text';

export type MadeKind = MadeFitting['kind'];

/** Kinds of made fitting in the user's words. */
export const MADE_WORDS: Readonly<Record<MadeKind, string>> = {
  tee: 'Tee',
  'elbow-90': '90° elbow',
  'elbow-45': '45° elbow',
  'street-elbow': '90° street elbow',
  reducer: 'Reducer',
  coupling: 'Coupling',
  union: 'Union',
  cross: 'Cross',
  cap: 'Cap',
  plug: 'Plug',
};

const TWO_ENDS = ['Larger end', 'Other end'] as const;
/** Ends of each kind, in the order in which the profile keeps them. */
export const LEG_WORDS: Readonly<Record<MadeKind, readonly string[]>> = {
  tee: ['Run, larger end', 'Run, other end', 'Branch'],
  'elbow-90': TWO_ENDS,
  'elbow-45': TWO_ENDS,
  'street-elbow': ['Inside thread', 'Outside thread'],
  reducer: ['Larger end', 'Smaller end'],
  coupling: TWO_ENDS,
  union: TWO_ENDS,
  cross: ['Run, larger end', 'Run, other end', 'Branch, one end', 'Branch, other end'],
  cap: ['End'],
  plug: ['End'],
};

/** Kinds whose ends are never all alike. */
const NEVER_ALIKE: readonly MadeKind[] = ['street-elbow', 'reducer'];
export const canBeAlike = (kind: MadeKind): boolean => LEG_WORDS[kind].length > 1 && !NEVER_ALIKE.includes(kind);

/** A made fitting as far as it was typed: it counts only when every end is there. */
export interface MadeDraft {
  readonly kind: MadeKind;
  /** One length holds for every end. */
  readonly isAlike: boolean;
  /** As many as any kind has ends; what the kind does not have is passed over. */
  readonly legs: readonly { readonly size: PipeSize; readonly reach_m: number | null }[];
  readonly weight_kg: number | null;
  readonly source: string;
}

const MOST_LEGS = 4;
export const BLANK_MADE: MadeDraft = { kind: 'tee', isAlike: false, legs: Array.from({ length: MOST_LEGS }, () => ({ size: '3/4', reach_m: null })), weight_kg: null, source: '' };

/** How many ends are asked for. */
export const legsAsked = ({ kind, isAlike }: Pick<MadeDraft, 'kind' | 'isAlike'>): number => (isAlike && canBeAlike(kind) ? 1 : LEG_WORDS[kind].length);

/** The fitting, as soon as every end of it is there. */
export function wholeMade(draft: MadeDraft): MadeFitting | undefined {
  const legs = draft.legs.slice(0, legsAsked(draft)).flatMap(({ size, reach_m }) => (reach_m === null ? [] : [{ size, reach_m }]));
  return legs.length === legsAsked(draft) ? { kind: draft.kind, legs, weight_kg: draft.weight_kg, source: draft.source } : undefined;
}

/** A fitting of the list as a draft, to be changed. */
export const draftOfMade = ({ kind, legs, weight_kg, source }: MadeFitting): MadeDraft => ({
  kind,
  isAlike: legs.length === 1 && canBeAlike(kind),
  legs: Array.from({ length: MOST_LEGS }, (_, i) => legs[i] ?? { size: legs[0]?.size ?? '3/4', reach_m: null }),
  weight_kg,
  source,
});

/** "Reducing tee: 1 1/4" 1 11/16", 1 1/4" 1 11/16", 1" 1 13/16"": sizes, each with its centre-to-end. */
export function madeText({ kind, legs }: MadeFitting, lengths: LengthSystem): { readonly name: string; readonly ends: string } {
  const isReducing = new Set(legs.map(({ size }) => size)).size > 1;
  const name = kind === 'street-elbow' ? MADE_WORDS[kind] : boughtWords({ kind, isStreet: false, isReducing });
  const ends = legs.map(({ size, reach_m }) => `${sizeText(size, lengths)}: ${formatLength(reach_m, lengths, { precision: 'fine' })}`);
  return { name: name.charAt(0).toUpperCase() + name.slice(1), ends: ends.join(', ') };
}

/** Whether two entries are of the same fitting: the later one then takes the place of the earlier. */
export const isSameMade = (a: MadeFitting, b: MadeFitting): boolean => a.kind === b.kind && a.legs.length === b.legs.length && a.legs.every(({ size }, i) => size === b.legs[i]?.size);
