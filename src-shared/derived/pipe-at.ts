import type { Network, Pipe } from '../model/plan.ts';
import { rememberedPart } from './remember.ts';

const firstPipesOf = rememberedPart((pipes: Network['pipes']): ReadonlyMap<string, Pipe> => {
  const first = new Map<string, Pipe>();
  for (const pipe of Object.values(pipes)) for (const node of [pipe.from, pipe.to]) if (!first.has(node)) first.set(node, pipe);
  return first;
});

/** The first pipe of the plan that ends at a node: the one that a nozzle there is screwed to. */
export const pipeAt = ({ pipes }: Pick<Network, 'pipes'>, node: string): Pipe | undefined => firstPipesOf(pipes).get(node);
