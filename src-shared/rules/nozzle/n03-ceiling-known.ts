import { defineRule, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';

/**
 * N3: the ceiling above a nozzle is known: slab, tile or slope.
 * Measure: none. Limit: known.
 * Not checked: the nozzle has lost its pipe end.
 */
export const n03CeilingKnown = defineRule<NozzleSubject>({
  id: 'N3',
  title: 'Local ceiling known',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'a ceiling height is entered where the nozzle hangs', source: 'project' },
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const { at, space, localCeiling_m } = nozzle;
    if (!at) return notChecked('the nozzle has lost its pipe end.');
    const place = placeOfNozzle(nozzle, at);
    const isKept = localCeiling_m !== undefined;
    const text = isKept
      ? `The ceiling above it is at ${say.length(localCeiling_m)}.`
      : space
        ? `The ceiling above it is unknown. Enter the height of ${space.name}.`
        : 'It hangs in no enclosure, so no ceiling is known. Draw the enclosure around it or move it inside.';
    return { kind: 'judged', isKept, text, place };
  },
});
