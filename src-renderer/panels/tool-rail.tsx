import { TOOL_KEYS } from '../actions/draw-actions.ts';
import { findAction } from '../actions/actions.ts';
import { STAGE_TOOLS, STAGE_WORDS, TOOL_WORDS } from '../plan-words.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { ToolIcon } from './tool-icon.tsx';
import { useActionContext, useRun } from './window-context.ts';

const stageOf = (state: State) => state.session.stage;
const toolOf = (state: State) => state.session.tool;
const levelOf = (state: State) => state.history.present.levels[state.session.level];

/** The tools at hand in the present stage. */
export function ToolRail() {
  const stage = useStore(stageOf);
  const tool = useStore(toolOf);
  useStore(levelOf);
  const { store, desk } = useActionContext();
  const run = useRun();
  const tools = STAGE_TOOLS[stage].includes(tool) ? STAGE_TOOLS[stage] : [...STAGE_TOOLS[stage], tool];
  return (
    <div className="tool-rail" role="toolbar" aria-orientation="vertical" aria-label={`Tools for ${STAGE_WORDS[stage].name}`}>
      {tools.map((id) => {
        const reason = findAction(`tool-${id}`)?.unavailable?.(store.get(), desk.get()) ?? null;
        return (
          <button
            key={id}
            type="button"
            className="tool"
            aria-pressed={tool === id}
            aria-disabled={reason !== null}
            title={`${TOOL_WORDS[id].does} (${TOOL_KEYS[id]})${reason ? `\n${reason}` : ''}`}
            onClick={() => run(`tool-${id}`)}
          >
            <ToolIcon tool={id} />
            <span>{TOOL_WORDS[id].name}</span>
          </button>
        );
      })}
    </div>
  );
}
