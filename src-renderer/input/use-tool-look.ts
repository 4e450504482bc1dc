import { useSyncExternalStore } from 'react';
import { useToolRunner } from './board-context.ts';
import type { ToolLook } from '../tools/tool-runner.ts';

/** What the tool at work shows and asks. */
export function useToolLook(): ToolLook {
  const runner = useToolRunner();
  return useSyncExternalStore(runner.subscribe, runner.look);
}
