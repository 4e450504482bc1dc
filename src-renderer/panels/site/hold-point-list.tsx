import { untickHoldPoint } from '#shared/commands/tick-hold-point';
import type { HoldPointState } from '#shared/site/arming-order';
import { useCommit } from '../bench/use-plan.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { HOLD_POINT_WORDS } from './standing-words.ts';

/** All hold points in the order of the work, and taking one back. */
export function HoldPointList({ order }: { readonly order: readonly HoldPointState[] }) {
  const commit = useCommit();
  return (
    <ol className="point-list" aria-label="Hold points in order">
      {order.map(({ point, check, standing }, i) => {
        const { words, verdict } = HOLD_POINT_WORDS[standing];
        const later = order.slice(i + 1).filter((each) => each.check?.done).map((each) => each.point.id);
        return (
          <li key={point.id} className={`point-line is-${standing}`} data-standing={standing}>
            <span className="point-mark">{verdict ? <VerdictMark verdict={verdict} silent /> : null}</span>
            <span className="point-words">
              <strong>{point.id}</strong> {point.words}
              <span className="quiet point-who">
                {words}
                {check?.done ? `: ${[check.by, check.witness === '' ? '' : `seen by ${check.witness}`, check.at].filter(Boolean).join(', ')}` : point.isWitnessed ? ', witnessed' : ''}
              </span>
            </span>
            {check?.done ? (
              <button
                type="button"
                className="button is-slim"
                title={later.length > 0 ? `Takes back ${later.join(', ')} as well: they stood on it.` : undefined}
                aria-label={`Take back ${point.id}${later.length > 0 ? `, and ${later.join(', ')}` : ''}`}
                onClick={() => commit(untickHoldPoint(point.id))}
              >
                Take back
              </button>
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}
