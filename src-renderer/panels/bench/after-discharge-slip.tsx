import type { Enclosure } from '#shared/model/plan';
import { USUAL_PROCEDURE } from '#shared/rules/safety/s10-re-entry';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { LongTextField } from '../fields/text-field.tsx';
import { Slip } from './slip.tsx';

type After = Enclosure['afterDischarge'];
const EXTRACT = { unknown: 'Not yet known', 'not-required': 'None', fixed: 'Fixed extract', portable: 'Portable fan' } as const satisfies Record<After['extract'], string>;
const MOST_m3_s = 1000;

/** What follows a discharge: how the gas gets out, and how people come back in. */
export function AfterDischargeSlip({ after, onCommit }: { readonly after: After; onCommit(after: After): void }) {
  const { extract, extractFlow_m3_s, procedure, hasMeter } = after;
  const hasExtract = extract === 'fixed' || extract === 'portable';
  return (
    <Slip title="After a discharge" part="after-discharge">
      <div className="fields">
        <Choice label="Extract after a discharge" value={extract} options={optionsOf(EXTRACT)} onCommit={(chosen) => onCommit({ ...after, extract: chosen })} />
        {hasExtract ? (
          <QuantityField
            kind="volumeFlow"
            label="Flow of the extract"
            value={extractFlow_m3_s}
            least={1e-6}
            most={MOST_m3_s}
            blank={{ text: 'not known', commit: () => onCommit({ ...after, extractFlow_m3_s: null }) }}
            onCommit={(flow_m3_s) => onCommit({ ...after, extractFlow_m3_s: flow_m3_s })}
          />
        ) : null}
        <KnownChoice label="Oxygen meter at hand" value={hasMeter} onCommit={(chosen) => onCommit({ ...after, hasMeter: chosen })} />
        <LongTextField label="How people come back in" value={procedure} rows={4} onCommit={(said) => onCommit({ ...after, procedure: said })} />
      </div>
      {procedure.trim() === '' ? (
        <button type="button" className="button is-slim" onClick={() => onCommit({ ...after, procedure: USUAL_PROCEDURE })}>
          Begin with the usual words
        </button>
      ) : null}
    </Slip>
  );
}
