import { useEffect, useState } from 'react';
import type { Enclosure, Leakage } from '#shared/model/plan';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { DoorFanReadings } from './door-fan-readings.tsx';
import { Slip } from './slip.tsx';

const KINDS = { unknown: 'Nothing yet', area: 'A leakage area, listed or estimated', 'door-fan': 'Measured with a door fan' } as const satisfies Record<Leakage['kind'], string>;

const MOST_AREA_m2 = 1000;
const MOST_Pa = 1000;

interface AreaDraft {
  readonly area_m2: number | null;
  readonly pressure_Pa: number | null;
}

/** A leakage area with the pressure that it holds at. The plan takes both or neither: an area alone says nothing. */
function AreaFields({ value, onCommit }: { readonly value: AreaDraft; onCommit(leakage: Leakage): void }) {
  const [draft, setDraft] = useState(value);
  useEffect(() => setDraft(value), [value]);
  const take = (next: AreaDraft): void => {
    setDraft(next);
    const { area_m2, pressure_Pa } = next;
    if (area_m2 !== null && pressure_Pa !== null) onCommit({ kind: 'area', area_m2, pressure_Pa });
  };
  const isHalf = draft.area_m2 === null || draft.pressure_Pa === null;
  return (
    <div className="fields">
      <QuantityField kind="area" label="Leakage area" value={draft.area_m2} least={1e-6} most={MOST_AREA_m2} onCommit={(area_m2) => take({ ...draft, area_m2 })} />
      <QuantityField kind="pressureDifference" label="At a pressure of" value={draft.pressure_Pa} least={0.1} most={MOST_Pa} onCommit={(pressure_Pa) => take({ ...draft, pressure_Pa })} />
      {isHalf ? <p className="field-help is-across">Both are needed before either counts. Areas are mostly listed at 4 Pa or 10 Pa.</p> : null}
    </div>
  );
}

const NO_AREA: AreaDraft = { area_m2: null, pressure_Pa: null };

/** What is known of the leaks, and how low the gas must reach: the time that the gas is held rests on both. */
export function LeakageSlip({ enclosure, change }: { readonly enclosure: Enclosure; change(part: Partial<Enclosure>): void }) {
  const { leakage, lowestProtected_m } = enclosure;
  const [asked, ask] = useState<Leakage['kind'] | null>(null);
  const kind = asked ?? leakage.kind;
  const take = (next: Leakage): void => {
    ask(null);
    change({ leakage: next });
  };
  const choose = (chosen: Leakage['kind']): void => {
    if (chosen === leakage.kind) ask(null);
    else if (chosen === 'unknown') take({ kind: 'unknown' });
    else if (chosen === 'door-fan') take({ kind: 'door-fan', readings: [] });
    else ask('area');
  };
  return (
    <Slip title="Leaks and holding the gas" part="leakage">
      <div className="fields">
        <Choice label="What is known of the leaks" value={kind} options={optionsOf(KINDS)} onCommit={choose} wide help={kind === 'unknown' ? 'Until they are known, how long the gas is held is not worked out.' : undefined} />
      </div>
      {kind === 'area' ? <AreaFields value={leakage.kind === 'area' ? leakage : NO_AREA} onCommit={take} /> : null}
      {kind === 'door-fan' && leakage.kind === 'door-fan' ? <DoorFanReadings readings={leakage.readings} onCommit={(readings) => take({ kind: 'door-fan', readings })} /> : null}
      <div className="fields">
        <LengthField
          label="Lowest thing to protect"
          value={lowestProtected_m}
          least={0}
          most={100}
          blank={{ text: 'not known', commit: () => change({ lowestProtected_m: null }) }}
          onCommit={(height_m) => change({ lowestProtected_m: height_m })}
          wide
          help={lowestProtected_m === null ? 'Height above the finished floor. Until it is known, how long the gas is held is not worked out.' : 'Above the finished floor.'}
        />
      </div>
    </Slip>
  );
}
