import type { Plan } from '#shared/model/plan';
import { refKey } from '#shared/model/plan';
import { CATALOGUE_PARTS, type PartLetter, partOf } from '#shared/rules/catalogue';
import { type Finding, VERDICTS, type Verdict } from '#shared/rules/finding';

/** How the list is put in order within a verdict. */
export const ARRANGEMENTS = ['thing', 'check', 'place'] as const;
export type Arrangement = (typeof ARRANGEMENTS)[number];
export const ARRANGEMENT_WORDS: Readonly<Record<Arrangement, string>> = { thing: 'By what it is about', check: 'By check', place: 'By level' };

/** Findings of one verdict about one thing, of one check, or on one level. */
export interface FindingGroup {
  readonly key: string;
  readonly title: string;
  readonly findings: readonly Finding[];
}

/** Findings of one verdict, in groups. */
export interface VerdictGroup {
  readonly verdict: Verdict;
  readonly count: number;
  readonly groups: readonly FindingGroup[];
}

const KINDS: Readonly<Partial<Record<Finding['subject']['kind'], string>>> = {
  enclosure: 'Rooms',
  network: 'Pipe networks',
  nozzle: 'Nozzles',
  cylinder: 'Cylinders',
  pipe: 'Pipes',
  node: 'Pipe ends and joints',
  support: 'Supports',
  opening: 'Openings',
  wall: 'Walls',
  corner: 'Walls',
  obstruction: 'Obstacles',
  device: 'Devices',
  adjoining: 'Adjoining spaces',
  underlay: 'Floor plans',
  profile: 'Unit profile',
  plan: 'Whole plan',
};

const named = ({ subject }: Finding): string => KINDS[subject.kind] ?? 'Other things';

function groupOf(finding: Finding, arrangement: Arrangement, plan: Plan): Omit<FindingGroup, 'findings'> {
  if (arrangement === 'check') return { key: finding.rule, title: finding.title };
  if (arrangement === 'thing') return { key: named(finding), title: named(finding) };
  const level = finding.place && plan.levels[finding.place.level];
  return level ? { key: level.id, title: level.name } : { key: 'plan', title: 'Whole plan' };
}

/**
 * Puts findings together by verdict, gravest first, and within a verdict in the order asked for.
 * @param most  so many of the first are read: groups that come after them are left as they are
 */
export function groupFindings(findings: readonly Finding[], arrangement: Arrangement, plan: Plan, most = Number.POSITIVE_INFINITY): VerdictGroup[] {
  let before = 0;
  const inOrder = (list: readonly Finding[]): readonly Finding[] => {
    const isRead = arrangement === 'thing' && before < most;
    before += list.length;
    return isRead ? byThing(list) : list;
  };
  return VERDICTS.flatMap((verdict): VerdictGroup[] => {
    const found = findings.filter((finding) => finding.verdict === verdict);
    if (found.length === 0) return [];
    const groups = new Map<string, { title: string; findings: Finding[] }>();
    for (const finding of found) {
      const { key, title } = groupOf(finding, arrangement, plan);
      const known = groups.get(key);
      if (known) known.findings.push(finding);
      else groups.set(key, { title, findings: [finding] });
    }
    return [{ verdict, count: found.length, groups: [...groups].map(([key, { title, findings: list }]) => ({ key, title, findings: inOrder(list) })) }];
  });
}

/** Made once: a comparison that makes its own takes longer than all the rest of a long list. */
const inWords = new Intl.Collator('en', { numeric: true });

/** What is about one thing stands together. */
function byThing(findings: readonly Finding[]): Finding[] {
  const keyed = findings.map((finding) => ({ finding, key: thingKey(finding) }));
  return keyed.sort((a, b) => inWords.compare(a.key, b.key)).map(({ finding }) => finding);
}

const thingKey = ({ subject, name }: Finding): string => `${name}/${subject.kind === 'plan' || subject.kind === 'profile' ? subject.kind : refKey(subject)}`;

/** Which findings a search lets through: words in any order, anywhere in name, title or sentence. */
export function matchesWords({ name, title, text, rule }: Finding, words: string): boolean {
  if (words === '') return true;
  const said = `${name} ${title} ${text} ${rule}`.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word));
}

/** Parts of the catalogue that occur among findings, with how many each has. */
export function partsIn(findings: readonly Finding[]): { readonly letter: PartLetter; readonly name: string; readonly count: number }[] {
  const counts = new Map<PartLetter, number>();
  for (const { rule } of findings) counts.set(partOf(rule), (counts.get(partOf(rule)) ?? 0) + 1);
  return CATALOGUE_PARTS.flatMap(({ letter, name }) => {
    const count = counts.get(letter);
    return count === undefined ? [] : [{ letter, name, count }];
  });
}
