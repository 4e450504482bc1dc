import { type FieldDimension, fieldDimensionsOf } from '../../derived/field-dimensions.ts';
import { HOLD_POINTS } from '../../model/hold-points.ts';
import { defineRule } from '../rule.ts';
import { perPlan } from '../subjects.ts';
import { planSubject } from './plan-subject.ts';

/** What the record of a built plan holds, and what it lacks. */
interface Recorded {
  readonly what: 'dimensions' | 'hold points';
  readonly asked: number;
  readonly missing: readonly string[];
}

/** Name of the thing that a dimension places: "N1" of "N1 a". */
const thingMeasured = ({ name }: FieldDimension): string => name.slice(0, name.lastIndexOf(' '));

/**
 * D9: once it is built, every dimension is measured and every hold point signed, with its witness where one is asked.
 * Measure: what is missing of the site record. Limit: nothing. Asked of a plan that is marked as built.
 */
export const d09FieldRecord = defineRule<Recorded>({
  id: 'D9',
  title: 'Field record complete',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'measured dimensions and signed hold points = all of them',
    source: 'common practice; acceptance tests and records: ISO 14520-1 and NFPA 2001, memory',
    caution: 'A record does not replace the witnessed test.',
  },
  subjects: perPlan((derived) => {
    const { plan } = derived;
    if (plan.info.state !== 'built') return [];
    const { measurements, checks } = plan.siteRecord;
    const asked = fieldDimensionsOf(derived);
    const unmeasured = [...new Set(asked.filter(({ id }) => !Object.hasOwn(measurements, id)).map(thingMeasured))];
    const unsigned = HOLD_POINTS.filter(({ id, isWitnessed }) => {
      const check = checks[id];
      return !check?.done || check.by.trim() === '' || (isWitnessed && check.witness.trim() === '');
    }).map(({ id }) => id);
    return [
      { ...planSubject(plan, { what: 'dimensions', asked: asked.length, missing: unmeasured } satisfies Recorded as Recorded), name: 'Measured dimensions' },
      { ...planSubject(plan, { what: 'hold points', asked: HOLD_POINTS.length, missing: unsigned } satisfies Recorded as Recorded), name: 'Hold points' },
    ];
  }),
  check({ what, asked, missing }) {
    const rest = missing.length > 6 ? `${missing.slice(0, 6).join(', ')} and ${missing.length - 6} more` : missing.join(', ');
    return {
      kind: 'judged',
      isKept: missing.length === 0,
      measured: missing.length,
      limit: 0,
      limitSource: 'common practice',
      margin: 0 - missing.length,
      inputs: [{ label: what === 'dimensions' ? 'Dimensions to measure' : 'Hold points to sign', value: String(asked) }],
      text:
        missing.length === 0
          ? what === 'dimensions'
            ? 'Every dimension is measured.'
            : 'Every hold point is signed and witnessed.'
          : what === 'dimensions'
            ? `Not all dimensions are measured: ${rest}. Enter the measured values.`
            : `Not signed, or without its witness: ${rest}.`,
    };
  },
});
