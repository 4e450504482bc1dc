import { ADJOINING_WORDS, SIGN_WORDS } from '#shared/model/surroundings-words';
import { DEVICE_WORDS, OBSTRUCTION_WORDS, OPENING_WORDS } from '#shared/model/thing-name';
import { feet_m } from '#shared/units/convert';
import { lengthSystem } from '../../plan-words.ts';
import type { State, ToolOptions } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { PIPE_SIZE_OPTIONS } from './pipe-form.tsx';
import { Slip } from './slip.tsx';

/** Steepest fall that is still within the degree that made fittings take up: 2 in in 10 ft. */
const STEEPEST = 1 / 60;

const toolOf = (state: State) => state.session.tool;
const chosenOf = (state: State) => state.session.toolOptions;

/** What the tool at hand will draw next, to be set before it is drawn. */
export function ToolOptionsSlip() {
  const tool = useStore(toolOf);
  const options = useStore(chosenOf);
  const store = useStoreItself();
  const system = useStore(lengthSystem);
  const fallOver_m = system === 'feet' ? feet_m(10) : 10;
  const change = (part: Partial<ToolOptions>): void => store.session({ toolOptions: { ...options, ...part } });
  switch (tool) {
    case 'pipe':
      return (
        <Slip title="Next pipe" part="tool-options">
          <div className="fields">
            <Choice label="Size" value={options.pipeSize} options={PIPE_SIZE_OPTIONS} onCommit={(pipeSize) => change({ pipeSize })} />
            <LengthField label="Height above floor" value={options.pipeHeight_m} onCommit={(pipeHeight_m) => change({ pipeHeight_m })} />
            <LengthField
              label="Drop below ceiling"
              value={options.pipeDrop_m}
              least={0}
              blank={{ text: 'at its height', commit: () => change({ pipeDrop_m: null }) }}
              onCommit={(pipeDrop_m) => change({ pipeDrop_m })}
              help="Each new place hangs so far below the ceiling over it."
            />
            <LengthField
              label="Follow wall at"
              value={options.pipeFollow_m}
              least={0}
              blank={{ text: 'no wall', commit: () => change({ pipeFollow_m: null }) }}
              onCommit={(pipeFollow_m) => change({ pipeFollow_m })}
              help="Middle of the pipe to the finished wall; it turns in the corners."
            />
            <LengthField
              label={`Fall in ${system === 'feet' ? '10 feet' : '10 m'}`}
              value={options.pipeFall === 0 ? null : options.pipeFall * fallOver_m}
              least={-STEEPEST * fallOver_m}
              most={STEEPEST * fallOver_m}
              blank={{ text: 'level', commit: () => change({ pipeFall: 0 }) }}
              onCommit={(fall_m) => change({ pipeFall: fall_m / fallOver_m })}
              help="Away from where the run begins; fittings take up to one degree."
            />
          </div>
        </Slip>
      );
    case 'opening':
      return (
        <Slip title="Next opening" part="tool-options">
          <div className="fields">
            <Choice label="Kind" value={options.openingKind} options={optionsOf(OPENING_WORDS)} onCommit={(openingKind) => change({ openingKind })} />
            <LengthField label="Width" value={options.openingWidth_m} least={0.01} blank={{ text: 'usual', commit: () => change({ openingWidth_m: null }) }} onCommit={(openingWidth_m) => change({ openingWidth_m })} />
          </div>
        </Slip>
      );
    case 'obstruction':
      return (
        <Slip title="Next obstacle" part="tool-options">
          <div className="fields">
            <Choice label="Kind" value={options.obstructionKind} options={optionsOf(OBSTRUCTION_WORDS)} onCommit={(obstructionKind) => change({ obstructionKind })} wide />
            <LengthField label="Bottom above floor" value={options.obstructionBottom_m} onCommit={(obstructionBottom_m) => change({ obstructionBottom_m })} />
            <LengthField label="Top above floor" value={options.obstructionTop_m} onCommit={(obstructionTop_m) => change({ obstructionTop_m })} />
          </div>
        </Slip>
      );
    case 'device':
      return (
        <Slip title="Next device" part="tool-options">
          <div className="fields">
            {/* Another kind hangs at another height. */}
            <Choice label="Kind" value={options.deviceKind} options={optionsOf(DEVICE_WORDS)} onCommit={(deviceKind) => change({ deviceKind, deviceHeight_m: null })} wide />
            <LengthField
              label="Height above floor"
              value={options.deviceHeight_m}
              blank={{ text: 'not known', commit: () => change({ deviceHeight_m: null }) }}
              onCommit={(deviceHeight_m) => change({ deviceHeight_m })}
              help="To its middle."
            />
            {options.deviceKind === 'sign' ? <Choice label="Stands" value={options.signKind} options={optionsOf(SIGN_WORDS)} onCommit={(signKind) => change({ signKind })} /> : null}
          </div>
        </Slip>
      );
    case 'adjoining':
      return (
        <Slip title="Next space" part="tool-options">
          <div className="fields">
            <Choice label="What it is" value={options.adjoiningKind} options={optionsOf(ADJOINING_WORDS)} onCommit={(adjoiningKind) => change({ adjoiningKind })} wide />
          </div>
        </Slip>
      );
    default:
      return null;
  }
}
