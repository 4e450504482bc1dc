import { useState } from 'react';
import type { Leakage } from '#shared/model/plan';
import { Choice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { useFigures } from './use-plan.ts';

type Reading = Extract<Leakage, { kind: 'door-fan' }>['readings'][number];
type Direction = Reading['direction'];

const DIRECTIONS = { out: 'Blowing out of the room', in: 'Blowing into the room' } as const satisfies Record<Direction, string>;
const MOST = 100;

interface Draft {
  readonly direction: Direction;
  readonly pressure_Pa: number | null;
  readonly flow_m3_s: number | null;
}

/** What a door-fan test lacks before a leak can be told from it. */
export function lackingReadings(readings: readonly Reading[]): string | null {
  const lacking = (['out', 'in'] as const).filter((direction) => new Set(readings.filter((reading) => reading.direction === direction).map(({ pressure_Pa }) => pressure_Pa)).size < 2);
  if (lacking.length === 2) return 'Enter readings at two pressures or more, both ways.';
  const [only] = lacking;
  return only === undefined ? null : `Enter readings at two pressures or more ${only === 'out' ? 'blowing out' : 'blowing in'}, too: one way alone hides leaks that close like a flap.`;
}

/** The readings of a door-fan test, and adding one. */
export function DoorFanReadings({ readings, onCommit }: { readonly readings: readonly Reading[]; onCommit(readings: Reading[]): void }) {
  const { quantity } = useFigures();
  const [draft, setDraft] = useState<Draft>({ direction: 'out', pressure_Pa: null, flow_m3_s: null });
  const { direction, pressure_Pa, flow_m3_s } = draft;
  const isWhole = pressure_Pa !== null && flow_m3_s !== null;
  const lacking = lackingReadings(readings);
  const add = (): void => {
    if (!isWhole) return;
    onCommit([...readings, { direction, pressure_Pa, flow_m3_s }]);
    setDraft({ direction, pressure_Pa: null, flow_m3_s: null });
  };
  return (
    <>
      {readings.length > 0 ? (
        <table className="sum-table" aria-label="Door-fan readings">
          <thead>
            <tr>
              <th scope="col">Fan</th>
              <th scope="col">Pressure</th>
              <th scope="col">Air flow</th>
              <th scope="col">
                <span className="out-of-sight">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {readings.map((reading, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: readings have no name; equal ones may stand twice
              <tr key={i}>
                <th scope="row">{reading.direction === 'out' ? 'out' : 'in'}</th>
                <td>{quantity(reading.pressure_Pa, 'pressureDifference')}</td>
                <td>{quantity(reading.flow_m3_s, 'volumeFlow')}</td>
                <td>
                  <button type="button" className="link" aria-label={`Take out reading ${i + 1}`} onClick={() => onCommit(readings.filter((_, k) => k !== i))}>
                    take out
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {lacking ? <p className="field-help">{lacking}</p> : null}
      {readings.length < MOST ? (
        <div className="fields">
          <Choice
            label="Next reading"
            value={direction}
            options={[
              { value: 'out', label: DIRECTIONS.out },
              { value: 'in', label: DIRECTIONS.in },
            ]}
            onCommit={(chosen) => setDraft({ ...draft, direction: chosen })}
            wide
          />
          <QuantityField kind="pressureDifference" label="Pressure difference" value={pressure_Pa} least={0.1} most={1000} onCommit={(taken) => setDraft({ ...draft, pressure_Pa: taken })} />
          <QuantityField kind="volumeFlow" label="Flow of the fan" value={flow_m3_s} least={1e-6} most={1000} onCommit={(taken) => setDraft({ ...draft, flow_m3_s: taken })} />
          <button type="button" className="button" aria-disabled={!isWhole} title={isWhole ? undefined : 'Enter pressure and flow first'} onClick={add}>
            Add this reading
          </button>
        </div>
      ) : null}
    </>
  );
}
