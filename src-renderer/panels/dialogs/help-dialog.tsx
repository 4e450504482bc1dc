import { ACTIONS, ACTION_GROUPS } from '../../actions/actions.ts';
import { shortcutText } from '../../actions/shortcuts.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { FirstStepsList } from '../first-steps-list.tsx';
import { isMac } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

const hostOf = (state: State) => state.session.host;

const BOARD_KEYS: readonly (readonly [string, string])[] = [
  ['Digits', 'Type a length, direction or height for what is being drawn; Tab goes to the next field'],
  ['Tab', 'The same with nothing typed yet: for a direction or a height alone'],
  ['Enter', 'Finish what is being drawn'],
  ['Escape', 'Step back one stage'],
  ['Backspace', 'Take the last corner back'],
  ['Shift', 'While drawing: square lines the other way round; while picking: add to the selection'],
  ['Alt', 'While drawing: catch nothing'],
  ['Space, drag', 'Move the view; the wheel zooms'],
  ['Arrows, Space', 'Draw without a mouse: the arrows take the pointer along the grid (with Shift ten lines), a tap on Space clicks'],
];

function KeyTable({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <dl className="key-table">
      {rows.map(([keys, what]) => (
        <div key={what}>
          <dt>
            <span className="key">{keys}</span>
          </dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Help: the first drawing, every key, and the cautions. */
export function HelpDialog() {
  const close = useCloseDialog();
  const info = useStore(hostOf);
  return (
    <Dialog
      name="help"
      title="Help"
      size="large"
      onClose={close}
      footer={
        <>
          <span className="quiet">{info ? `Nozzlewright ${info.version}. Plans are kept in ${info.plansFolder}` : 'Nozzlewright'}</span>
          <button type="button" className="button is-main" onClick={close}>
            Done
          </button>
        </>
      }
    >
      <div className="help-columns">
        <section>
          <h3>Your first drawing</h3>
          <FirstStepsList onGo={close} />
          <h3>Lengths</h3>
          <p>
            All of these are understood at any time: <span className="key">11' 4 1/2"</span> <span className="key">11-4 1/2</span> <span className="key">136.5"</span> <span className="key">3.46 m</span> <span className="key">3460 mm</span>
          </p>
          <h3>Cautions</h3>
          <ul className="cautions">
            <li>Nitrogen displaces oxygen. It has no smell and gives no warning: people in a flooded room lose consciousness within seconds.</li>
            <li>What the program works out is preliminary. The listing, the manual of the unit, the adopted code and licensed practice decide.</li>
            <li>A check that says “not checked” says nothing is proved. Enter what is missing.</li>
            <li>The sample unit is invented. Nothing may be built from its figures.</li>
          </ul>
        </section>
        <section>
          <h3>On the board</h3>
          <KeyTable rows={BOARD_KEYS} />
        </section>
        {ACTION_GROUPS.map((group) => {
          const rows = ACTIONS.filter((action) => action.group === group && action.keys).map((action): [string, string] => [(action.keys ?? []).map((keys) => shortcutText(keys, isMac())).join(' or '), action.name]);
          return rows.length > 0 ? (
            <section key={group}>
              <h3>{group}</h3>
              <KeyTable rows={rows} />
            </section>
          ) : null;
        })}
      </div>
    </Dialog>
  );
}
