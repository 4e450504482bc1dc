import { OBSTRUCTION_WORDS, OPENING_WORDS } from '#shared/model/thing-name';
import type { State, ToolOptions } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { PIPE_SIZE_OPTIONS } from './pipe-form.tsx';
import { Slip } from './slip.tsx';

const toolOf = (state: State) => state.session.tool;
const chosenOf = (state: State) => state.session.toolOptions;

/** What the tool at hand will draw next, to be set before it is drawn. */
export function ToolOptionsSlip() {
  const tool = useStore(toolOf);
  const options = useStore(chosenOf);
  const store = useStoreItself();
  const change = (part: Partial<ToolOptions>): void => store.session({ toolOptions: { ...options, ...part } });
  switch (tool) {
    case 'pipe':
      return (
        <Slip title="Next pipe" part="tool-options">
          <div className="fields">
            <Choice label="Size" value={options.pipeSize} options={PIPE_SIZE_OPTIONS} onCommit={(pipeSize) => change({ pipeSize })} />
            <LengthField label="Height above floor" value={options.pipeHeight_m} onCommit={(pipeHeight_m) => change({ pipeHeight_m })} />
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
    default:
      return null;
  }
}
