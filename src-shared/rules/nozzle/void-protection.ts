import type { DerivedNozzle, Space } from '../../derived/derived.ts';
import { type Answer, type Asked, notChecked } from '../rule.ts';
import type { FindingInput } from '../finding.ts';

/** A void with what is known of it. */
export interface AskedVoid {
  readonly space: Space;
  /** Names of the nozzles that serve it. */
  readonly nozzles: readonly string[];
}

/** A void as N16 and N17 ask about it. */
export const askedVoid = (space: Space, nozzles: readonly DerivedNozzle[]): Asked<AskedVoid> => ({
  subject: { space, nozzles: nozzles.map(({ nozzle }) => nozzle.name) },
  ref: space.enclosureRef,
  name: space.name,
});

const VOID_WORDS = { room: 'space', 'under-floor': 'void under the floor', 'ceiling-void': 'void above the ceiling' } as const;

/**
 * Whether a void has a nozzle of its own, or is left out with reason, name and date. Where neither is so it is a stop; so
 * is a nozzle in a void that is not counted as protected, for the agent is then not counted either.
 */
export function judgeVoid({ space, nozzles }: AskedVoid): Answer {
  const { kind, enclosure, isProtected } = space;
  const place = { level: space.level.id, at: space.outline, areas: [[space.outline, ...space.holes]] };
  const drawn = kind === 'under-floor' ? enclosure.underFloor : enclosure.ceilingVoid;
  if (!drawn) return notChecked('the void is not drawn.', place);
  const { exclusion } = drawn;
  const voidWords = VOID_WORDS[kind];
  const figures = { kind: 'judged', measured: nozzles.length } as const;
  if (isProtected) {
    return nozzles.length > 0
      ? { ...figures, isKept: true, limit: 1, limitSource: 'standard', margin: nozzles.length - 1, text: `The ${voidWords} has ${nozzles.length === 1 ? `nozzle ${nozzles[0]}` : `${nozzles.length} nozzles`} of its own.`, place }
      : { ...figures, isKept: false, limit: 1, limitSource: 'standard', margin: -1, text: `The ${voidWords} has no nozzle of its own.`, place, cure: { kind: 'advice', text: `Hang a nozzle in the ${voidWords}.` } };
  }
  if (nozzles.length > 0) {
    return { ...figures, isKept: false, text: `The ${voidWords} is not counted as protected, although ${nozzles.length === 1 ? `nozzle ${nozzles[0]} serves` : `${nozzles.length} nozzles serve`} it: its agent is missing.`, place, cure: { kind: 'advice', text: 'Count the void as protected, or take its nozzles away.' } };
  }
  const blank = exclusion ? [[exclusion.reason, 'the reason'], [exclusion.by, 'who signed'], [exclusion.date, 'the date']].flatMap(([value, word]) => (value?.trim() ? [] : [word])) : [];
  if (!exclusion) {
    return { ...figures, isKept: false, text: `The ${voidWords} is not protected, and nobody has signed that it is left out.`, place, cure: { kind: 'advice', text: `Hang a nozzle in the ${voidWords} and count it as protected, or enter why it is left out, who signed that and when.` } };
  }
  if (blank.length > 0) {
    return { ...figures, isKept: false, text: `The ${voidWords} is left out, but ${blank.join(' and ')} ${blank.length === 1 ? 'is' : 'are'} missing.`, place, cure: { kind: 'advice', text: 'Enter why it is left out, who signed that and when.' } };
  }
  const inputs: FindingInput[] = [{ label: 'Left out because', value: exclusion.reason }, { label: 'Signed by', value: `${exclusion.by}, ${exclusion.date}` }];
  return { ...figures, isKept: true, text: `The ${voidWords} is left out; ${exclusion.by} signed that on ${exclusion.date}.`, inputs, place };
}
