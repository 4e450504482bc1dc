import type { Evaluation } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';

/** One of the five steps of a first drawing. */
export interface FirstStep {
  readonly title: string;
  readonly how: string;
  /** Action that begins it. */
  readonly action: string;
  readonly isDone: boolean;
}

/** The five steps of a first drawing, ticked by what the plan holds, in whichever order it came about. */
export function firstSteps(plan: Plan, { derived, found }: Evaluation): readonly FirstStep[] {
  const enclosures = Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures));
  const joined = derived.networks.some((network) => network.paths.length > 0);
  return [
    { title: 'Draw the room', how: 'Along its finished wall faces. Type lengths while you draw.', action: 'tool-enclosure', isDone: enclosures.length > 0 },
    { title: 'Give it its height', how: 'Select the room and type floor to ceiling.', action: 'stage-survey', isDone: enclosures.length > 0 && enclosures.every((enclosure) => enclosure.height_m !== null) },
    { title: 'Stand the cylinder', how: 'Press against the wall that carries it.', action: 'tool-cylinder', isDone: Object.values(plan.networks).some((network) => Object.keys(network.cylinders).length > 0) },
    { title: 'Hang a nozzle, run the pipe', how: 'From the cylinder to the nozzle; bends become elbows.', action: derived.nozzles.length === 0 ? 'tool-nozzle' : 'tool-pipe', isDone: joined },
    { title: 'Clear the stops', how: 'Go through what the checks say: each leads to its cure or to the field it waits for.', action: 'findings', isDone: joined && found.counts.stop === 0 },
  ];
}
