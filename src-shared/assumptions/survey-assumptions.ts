import type { Plan, Underlay } from '../model/plan.ts';
import type { Assumption } from './assumption.ts';

/** What is taken for granted of a floor plan's scale; undefined where two lengths prove it. */
function takenOf({ calibration, knownLengths }: Underlay): string | undefined {
  if (calibration === 'none') return 'Its scale is not set: it is drawn as if one of its units were a metre.';
  const checks = calibration === 'two-points' ? knownLengths.length - 1 : knownLengths.length;
  if (checks > 0) return undefined;
  return calibration === 'file-units' ? 'Its scale is what the file says, and no length on site was compared with it.' : 'Its scale rests on one known length, which nothing proves.';
}

/** Floor plans whose scale nobody has proved. */
export const surveyAssumptions = ({ levels }: Plan): Assumption[] =>
  Object.values(levels).flatMap(({ id: level, underlays }) =>
    Object.values(underlays).flatMap((underlay): Assumption[] => {
      const taken = takenOf(underlay);
      if (!taken) return [];
      return [
        {
          id: `scale/${level}/${underlay.id}`,
          topic: 'survey',
          name: underlay.name,
          taken,
          affects: 'Every length, area and volume that was traced from it.',
          change: 'Measure a length on site and enter it as a known length.',
          at: { kind: 'field', on: { kind: 'underlay', level, id: underlay.id }, label: 'True distance that sets it' },
        },
      ];
    }),
  );
