import { nearestSolid } from '../../derived/clash.ts';
import type { DerivedPipe } from '../../derived/derived.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, limitOrBlank } from '../rule.ts';

/** Solids farther from the pipe than this beyond its limit are of no interest [m]. */
const LOOK_AROUND_m = 0.25;

/**
 * P27: pipe keeps clear of beams, boxes and other solids.
 * Measure: outside of the pipe to the nearest solid in space [m]; negative when they run into each other.
 * Limit: clearance around pipe from the unit profile (common practice: 1 in); below 0 it is a stop.
 * Not checked: the limit is blank. A clash below 0 is reported even then.
 */
export const p27Clash = defineRule<DerivedPipe>({
  id: 'P27',
  title: 'Clash',
  severity: 'warn',
  measure: 'length',
  basis: { formula: 'outside of pipe to nearest solid ≥ limit; below 0 they collide', source: 'common practice 1 in (25 mm)' },
  limitKeys: ['pipeClearance_m'],
  subjects: ({ networks }) =>
    networks.flatMap(({ pipes }) => pipes.map((pipe) => ({ subject: pipe, ref: pipe.ref, name: `${pipe.pipe.size} in pipe` }))),
  check(pipe, { derived, say }) {
    const { level, profile } = pipe.network;
    const wanted = limitOrBlank(profile, 'pipeClearance_m');
    const near = nearestSolid(derived, pipe, (wanted.limit?.value ?? 0) + LOOK_AROUND_m);
    const at = [pipe.from, pipe.to];
    const place = { level: level.id, at, heights: at };
    if (near && near.clearance_m < -LENGTH_SLACK_m) {
      return {
        kind: 'judged',
        isKept: false,
        severity: 'stop',
        measured: near.clearance_m,
        limit: wanted.limit?.value ?? 0,
        limitSource: wanted.limit?.source ?? 'geometry',
        margin: near.clearance_m - (wanted.limit?.value ?? 0),
        text: `Runs at least ${say.length(-near.clearance_m)} into ${near.solid.obstruction.name}. Shift it.`,
        place,
      };
    }
    if (!wanted.limit) return wanted.blank;
    if (!near) return { kind: 'judged', isKept: true, limit: wanted.limit.value, limitSource: wanted.limit.source, text: 'Keeps clear of everything drawn.', place };
    const figures = atLeast(near.clearance_m, wanted.limit, LENGTH_SLACK_m);
    const { value: gap, limit: least } = say.against(near.clearance_m, wanted.limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Is ${gap} clear of ${near.solid.obstruction.name}.`
        : `Is only ${gap} clear of ${near.solid.obstruction.name}; ${least} is wanted. Shift it.`,
      place,
    };
  },
});
