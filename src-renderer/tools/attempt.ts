import type { Command } from '#shared/commands/command';
import type { ToolStep, ToolView } from './tool.ts';

/**
 * Commits a command if the plan takes it; otherwise the tool stays where it was, so that nothing drawn is lost,
 * and the user reads the reason.
 * @param done  step when the command is taken; its `commit` is added here
 * @param stay  state when it is refused
 */
export function commitOr<S>(view: ToolView, command: Command, done: ToolStep<S>, stay: S): ToolStep<S> {
  const outcome = command(view.plan);
  return outcome.ok ? { ...done, commit: command } : { state: stay, refusal: outcome.reason };
}
