import { useEffect, useState } from 'react';
import type { Anchors } from '#shared/model/plan';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { Slip } from './slip.tsx';

type Draft = { readonly [K in keyof Anchors]: Anchors[K] | null };

const BLANK: Draft = { kind: null, count: null, tension_N: null, shear_N: null, edge_m: null, leastEdge_m: null };
const MOST_N = 1e6;

/** Anchors as soon as every figure of them is there. */
export function wholeAnchors({ kind, count, tension_N, shear_N, edge_m, leastEdge_m }: Draft): Anchors | null {
  if (kind === null || kind === '' || count === null || tension_N === null || shear_N === null || edge_m === null || leastEdge_m === null) return null;
  return { kind, count, tension_N, shear_N, edge_m, leastEdge_m };
}

/** What holds a cylinder's rail to its wall. The plan takes all of it or nothing: half of it bears nothing. */
export function AnchorsSlip({ anchors, onCommit }: { readonly anchors: Anchors | null; onCommit(anchors: Anchors | null): void }) {
  const [draft, setDraft] = useState<Draft>(anchors ?? BLANK);
  // Anchors that went by undo empty the fields; those that went because one field was emptied leave the others.
  useEffect(() => setDraft((before) => anchors ?? (wholeAnchors(before) ? BLANK : before)), [anchors]);
  const take = (part: Partial<Draft>): void => {
    const next = { ...draft, ...part };
    setDraft(next);
    const whole = wholeAnchors(next);
    if (whole) onCommit(whole);
    else if (anchors) onCommit(null);
  };
  const blank = (key: keyof Draft) => ({ text: 'not known', commit: () => take({ [key]: null }) });
  const isBegun = Object.values(draft).some((value) => value !== null && value !== '');
  return (
    <Slip title="Anchors in the wall" part="anchors">
      {anchors ? null : <p className="field-help">{isBegun ? 'Every figure is needed before they count.' : 'Until they are entered, what each anchor bears is not checked.'}</p>}
      <div className="fields">
        <TextField label="Kind of anchor" value={draft.kind ?? ''} onCommit={(kind) => take({ kind })} placeholder="as its maker calls it" wide />
        <QuantityField kind="count" label="Anchors of this rail" value={draft.count} least={1} most={50} blank={blank('count')} onCommit={(count) => take({ count })} />
        <QuantityField kind="force" label="Allowed pull, each" value={draft.tension_N} least={0} most={MOST_N} blank={blank('tension_N')} onCommit={(tension_N) => take({ tension_N })} help="Straight out of the wall." />
        <QuantityField kind="force" label="Allowed shear, each" value={draft.shear_N} least={0} most={MOST_N} blank={blank('shear_N')} onCommit={(shear_N) => take({ shear_N })} help="Along the wall." />
        <LengthField label="To the nearest edge" value={draft.edge_m} least={0} blank={blank('edge_m')} onCommit={(edge_m) => take({ edge_m })} />
        <LengthField label="Least edge distance" value={draft.leastEdge_m} least={0} blank={blank('leastEdge_m')} onCommit={(leastEdge_m) => take({ leastEdge_m })} help="From the anchor’s maker." />
      </div>
    </Slip>
  );
}
