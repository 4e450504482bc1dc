import { type PlanPoint, distance_m, planPoint } from '../../geometry/point.ts';
import { isSameStretch } from '../../model/known-length.ts';
import type { KnownLength, Underlay } from '../../model/plan.ts';
import type { Place } from '../finding.ts';
import { defineRule, notChecked } from '../rule.ts';

/** Known lengths may differ from the drawing by this share. Source: common practice. */
const AGREEMENT = 0.005;

/** Where a known length lies on the plan. */
function placeOf({ a, b }: KnownLength, { at, rotation_rad, metresPerUnit }: Underlay, level: string): Place {
  const cos = Math.cos(rotation_rad) * (metresPerUnit ?? 1);
  const sin = Math.sin(rotation_rad) * (metresPerUnit ?? 1);
  const onPlan = ({ x, y }: PlanPoint): PlanPoint => planPoint(at.x + cos * x - sin * y, at.y + sin * x + cos * y);
  const [from, to] = [onPlan(a), onPlan(b)];
  return { level, at: [from, to], dimension: { a: from, b: to } };
}

/** A share in per cent, so finely that it never reads as the limit when it is more. */
const percentText = (share: number): string => {
  const coarse = (share * 100).toFixed(2);
  return share > AGREEMENT && Number(coarse) <= AGREEMENT * 100 ? (share * 100).toFixed(6) : coarse;
};

/**
 * D1: the scale of an imported floor plan is proved by a second known length.
 * Measure: greatest difference between a typed distance and the same distance on the drawing, as a share.
 * Limit: 0.5 % (common practice).
 * Not checked: no scale yet, or no known length beside the one that set it.
 */
export const d01UnderlayScale = defineRule<{ underlay: Underlay; level: string }>({
  id: 'D1',
  title: 'Floor plan scale',
  severity: 'stop',
  measure: 'ratio',
  basis: { formula: '|length on drawing × scale − typed length| ÷ typed length ≤ 0.5 %', source: 'common practice' },
  subjects: ({ plan }) =>
    Object.values(plan.levels).flatMap((level) =>
      Object.values(level.underlays).map((underlay) => ({
        subject: { underlay, level: level.id },
        ref: { kind: 'underlay', level: level.id, id: underlay.id } as const,
        name: underlay.name,
      })),
    ),
  check({ underlay, level }, { say }) {
    const { metresPerUnit, calibration, knownLengths } = underlay;
    if (metresPerUnit === null || calibration === 'none') return notChecked('its scale is not set. Pick two points and type their distance.');
    const [first, ...others] = knownLengths;
    // A length cannot prove itself.
    const proofs = calibration === 'two-points' && first ? others.filter((other) => !isSameStretch(first, other)) : knownLengths;
    if (proofs.length === 0) return notChecked('only one length says what its scale is. Pick a second known length.');
    const worst = proofs
      .map((proof) => ({ proof, drawn_m: distance_m(proof.a, proof.b) * metresPerUnit }))
      .map(({ proof, drawn_m }) => ({ proof, drawn_m, share: Math.abs(drawn_m - proof.distance_m) / proof.distance_m }))
      .reduce((a, b) => (b.share > a.share ? b : a));
    const isKept = worst.share <= AGREEMENT + 1e-12;
    const percent = percentText(worst.share);
    const typed = say.against(worst.proof.distance_m, worst.drawn_m);
    return {
      kind: 'judged',
      isKept,
      measured: worst.share,
      limit: AGREEMENT,
      limitSource: 'common practice',
      margin: AGREEMENT - worst.share,
      text: isKept
        ? `Its scale agrees with a second known length within ${percent} %.`
        : `A length typed as ${typed.value} measures ${typed.limit} on it (${percent} % off; 0.5 % is allowed). Set the scale again.`,
      place: placeOf(worst.proof, underlay, level),
    };
  },
});
