import { addShutdowns } from '#shared/commands/add-shutdowns';
import { derivePlan } from '#shared/derived/derive-plan';
import { type ThingToShut, thingsToShut } from '#shared/derived/things-to-shut';
import type { Enclosure, RefOf, Shutdown } from '#shared/model/plan';
import { SHUTDOWN_ON_WORDS, SHUTDOWN_WORDS } from '#shared/model/shutdown-words';
import { countOf } from '../../plan-words.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { TextField } from '../fields/text-field.tsx';
import { RowButtons } from '../network/row-buttons.tsx';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

const NOT_DRAWN = '-';

/** Rows for things that must be shut and that no row names: each is shut at the first detector. */
export const wantingRows = (things: readonly ThingToShut[]): Omit<Shutdown, 'id'>[] =>
  things.flatMap(({ ref, name, kind, isWanting }) => (isWanting ? [{ name: kind === 'fan' ? `Fan of ${name.charAt(0).toLowerCase()}${name.slice(1)}` : name, kind, target: ref.id, on: 'first-detector' as const }] : []));

/** What a row may shut: things that are drawn, nothing drawn, and the thing that it names though it has gone. */
function targetOptions(things: readonly ThingToShut[], target: Shutdown['target']) {
  const there = things.map(({ ref, name }) => ({ value: ref.id, label: name }));
  const gone = target !== null && !there.some(({ value }) => value === target) ? [{ value: target, label: 'Something else, or gone' }] : [];
  return [{ value: NOT_DRAWN, label: 'Not drawn' }, ...there, ...gone];
}

/** The release matrix of a room: what is shut or switched off, and on what. */
export function ShutdownSlip({ at, enclosure, change }: { readonly at: RefOf<'enclosure'>; readonly enclosure: Enclosure; change(part: Partial<Enclosure>): void }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const on = derivePlan(plan).levels.find(({ level }) => level.id === at.level);
  const things = on ? thingsToShut(enclosure, on) : [];
  const wanting = wantingRows(things);
  const rows = Object.values(enclosure.shutdowns);
  return (
    <Slip title="Release matrix" part="release-matrix">
      {rows.length === 0 ? <p className="quiet">Nothing is shut yet: dampers, fans, doors that are held open, power, fuel, processes.</p> : null}
      {rows.map((row, i) => {
        const take = (part: Partial<Shutdown>): void => change({ shutdowns: { ...enclosure.shutdowns, [row.id]: { ...row, ...part } } });
        const what = row.name || `row ${i + 1}`;
        return (
          <fieldset className="part-fields" key={row.id}>
            <legend>{row.name || `Row ${i + 1}`}</legend>
            <div className="fields">
              <TextField label={`Name of row ${i + 1}`} value={row.name} onCommit={(name) => take({ name })} wide />
              <Choice label={`Row ${i + 1} shuts`} value={row.kind} options={optionsOf(SHUTDOWN_WORDS)} onCommit={(kind) => take({ kind })} />
              <Choice label={`Which, row ${i + 1}`} value={row.target ?? NOT_DRAWN} options={targetOptions(things, row.target)} onCommit={(chosen) => take({ target: chosen === NOT_DRAWN ? null : chosen })} />
              <Choice label={`Row ${i + 1} on`} value={row.on} options={optionsOf(SHUTDOWN_ON_WORDS)} onCommit={(when) => take({ on: when })} wide />
            </div>
            <div className="row">
              <RowButtons what={what} onTakeOut={() => change({ shutdowns: Object.fromEntries(Object.entries(enclosure.shutdowns).filter(([id]) => id !== row.id)) })} />
            </div>
          </fieldset>
        );
      })}
      <div className="row">
        <button type="button" className="button is-slim" onClick={() => commit(addShutdowns(at, [{ name: '', kind: 'fan', target: null, on: 'first-detector' }]))}>
          Add a row
        </button>
        {wanting.length > 0 ? (
          <button type="button" className="button is-slim" onClick={() => commit(addShutdowns(at, wanting))}>
            Add what is wanting: {countOf(wanting.length, 'row')}
          </button>
        ) : null}
      </div>
    </Slip>
  );
}
