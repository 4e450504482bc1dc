import type { LimitKey } from '../profile/limit-catalogue.ts';
import { type FindingCounts, countFindings } from './count-findings.ts';
import type { Basis, Finding, MeasureKind } from './finding.ts';
import type { Rule } from './rule.ts';

/** Parts of the catalogue by the letter of their ids, with how many checks each has. */
export const CATALOGUE_PARTS = [
  { letter: 'N', name: 'Nozzles', count: 24 },
  { letter: 'P', name: 'Pipe', count: 34 },
  { letter: 'C', name: 'Cylinders', count: 13 },
  { letter: 'E', name: 'Enclosures', count: 16 },
  { letter: 'S', name: 'Safety of people', count: 10 },
  { letter: 'L', name: 'Release', count: 10 },
  { letter: 'D', name: 'Documents', count: 9 },
] as const;
export type PartLetter = (typeof CATALOGUE_PARTS)[number]['letter'];

/** Every id of the catalogue, in its order. */
export const CATALOGUE_IDS: readonly string[] = CATALOGUE_PARTS.flatMap(({ letter, count }) => Array.from({ length: count }, (_, i) => `${letter}${i + 1}`));

/** The part that a check belongs to. */
export const partOf = (rule: string): PartLetter => (CATALOGUE_PARTS.find(({ letter }) => rule.startsWith(letter))?.letter ?? 'D');

/** One check with what it was asked in a plan. */
export interface CatalogueRow {
  readonly id: string;
  readonly title: string;
  readonly part: PartLetter;
  readonly measure: MeasureKind;
  readonly basis: Basis;
  /** Figures of the manual without which it cannot judge. */
  readonly limitKeys: readonly LimitKey[];
  readonly counts: FindingCounts;
  /** Nothing that it asks about is drawn. */
  readonly isAskedOfNothing: boolean;
}

/** Where an id stands in the catalogue; unknown ones come last. */
const orderOf = (id: string): number => {
  const at = CATALOGUE_IDS.indexOf(id);
  return at < 0 ? CATALOGUE_IDS.length : at;
};

/** Every check of the program with how often it was asked and what it said, in the order of the catalogue. */
export function catalogueOf(rules: readonly Rule[], findings: readonly Finding[]): CatalogueRow[] {
  const byRule = new Map<string, Finding[]>();
  for (const finding of findings) {
    const known = byRule.get(finding.rule);
    if (known) known.push(finding);
    else byRule.set(finding.rule, [finding]);
  }
  return [...rules]
    .sort((a, b) => orderOf(a.id) - orderOf(b.id))
    .map(({ id, title, measure, basis, limitKeys }) => {
      const found = byRule.get(id) ?? [];
      return { id, title, part: partOf(id), measure, basis, limitKeys, counts: countFindings(found), isAskedOfNothing: found.length === 0 };
    });
}

/** Whether a check has these words, in any order, in id, title, formula or source. */
export function matchesCheck({ id, title, basis }: CatalogueRow, words: string): boolean {
  const said = `${id} ${title} ${basis.formula} ${basis.source}`.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word));
}
