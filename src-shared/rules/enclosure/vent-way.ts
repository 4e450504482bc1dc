import type { Neighbour } from '../../derived/neighbours.ts';
import { neighbourName } from '../../derived/neighbours.ts';
import type { Opening, VentStep } from '../../model/plan.ts';

/** Spaces that gas must not pass on its way out: people leave by them, or they must be kept free of it. */
const KEPT_FREE: ReadonlySet<VentStep['through']> = new Set<VentStep['through']>(['corridor', 'exit', 'protected']);
const STEP_WORDS: Readonly<Record<VentStep['through'], string>> = { duct: 'a duct', louvre: 'a louvre', room: 'a room', corridor: 'a corridor', exit: 'a way out', protected: 'another protected room', outdoors: 'outdoors' };
const LEADS_WORDS: Readonly<Record<Exclude<Opening['leadsTo'], 'unknown' | 'outdoors'>, string>> = { corridor: 'a corridor', room: 'another room', exit: 'a way out' };
const BESIDE_WORDS: Readonly<Record<string, string>> = { corridor: 'a corridor', exit: 'a way out', room: 'a room' };

/** What a step is, in the middle of a sentence: “North duct”, else "a duct". */
export const stepName = ({ name, through }: VentStep): string => (name.trim() ? `“${name.trim()}”` : STEP_WORDS[through]);

/** Where a vent lets the gas out: outdoors, somewhere that it must not, or nobody has said. */
export type VentEnd = { readonly kind: 'outdoors' } | { readonly kind: 'unknown' } | { readonly kind: 'wrong'; readonly text: string };

/** What is drawn right behind a vent that is said to open straight to outdoors. */
function drawnIndoors(behind: readonly Neighbour[]): string | undefined {
  for (const neighbour of behind) {
    const { beyond } = neighbour;
    if (beyond.kind === 'enclosure') return `${neighbourName(neighbour)}, which is protected as well`;
    const word = BESIDE_WORDS[beyond.adjoining.kind];
    if (word) return beyond.adjoining.name.trim() ? `“${beyond.adjoining.name.trim()}”, ${word}` : word;
  }
  return undefined;
}

/** Where a relief vent leads in the end: its way as it is listed, else where it is said to lead, held against what is drawn behind it. */
export function ventEndOf({ leadsTo, ventPath }: Pick<Opening, 'leadsTo' | 'ventPath'>, behind: readonly Neighbour[]): VentEnd {
  const last = ventPath.at(-1);
  const bad = ventPath.find(({ through }) => KEPT_FREE.has(through));
  if (bad) return { kind: 'wrong', text: `Its way outdoors passes ${bad.name.trim() ? `${stepName(bad)}, ${STEP_WORDS[bad.through]}` : stepName(bad)}: the gas would come where people leave or where it must not.` };
  if (last && last.through !== 'outdoors') return { kind: 'wrong', text: `Its way ends at ${stepName(last)} and does not reach outdoors.` };
  if (!last && leadsTo === 'unknown') return { kind: 'unknown' };
  if (!last && leadsTo !== 'outdoors' && leadsTo !== 'unknown') return { kind: 'wrong', text: `Leads to ${LEADS_WORDS[leadsTo]}, and no way from there to outdoors is listed: the gas would come to people.` };
  const isStraight = !last || ventPath[0]?.through === 'outdoors';
  const indoors = isStraight ? drawnIndoors(behind) : undefined;
  if (indoors) return { kind: 'wrong', text: `Is said to open to outdoors, but behind its wall the plan shows ${indoors}.` };
  return { kind: 'outdoors' };
}
