import type { DerivedNetwork } from '../derived/derived.ts';
import type { Ref } from '../model/plan.ts';
import type { Assumption } from './assumption.ts';
import { namesOf } from './unit-assumptions.ts';

/** What is taken for granted of one network of pipe. */
export function pipeAssumptions({ network, ref, pipes, nozzles }: DerivedNetwork): Assumption[] {
  const [firstPipe] = pipes;
  if (!firstPipe) return [];
  const about = (id: string, taken: string, affects: string, change: string, on: Ref = ref, label = 'Name'): Assumption => ({ id: `${id}/${network.id}`, topic: 'pipe', name: network.name, taken, affects, change, at: { kind: 'field', on, label } });
  const usual = pipes.filter(({ pipe }) => pipe.material === 'black-steel' && pipe.joint === 'threaded' && pipe.insulation_m === 0);
  const unmeasured = pipes.filter(({ pipe }) => pipe.measured_m === null);
  const hanging = nozzles.filter(({ nozzle, space }) => nozzle.serves === null && space !== undefined);
  const supports = Object.values(network.supports);
  return [
    ...(usual.length > 0
      ? [about('make', `${usual.length === pipes.length ? 'All its pipe' : `${usual.length} of its ${pipes.length} pipes`} stand as new pipe is drawn: black steel, threaded, bare.`, 'Fittings, cut lengths, ratings, weights and the room for a wrench.', 'Choose material, joints and insulation of the pipe.', firstPipe.ref, 'Material')]
      : []),
    ...(unmeasured.length > 0
      ? [about('as-drawn', `${unmeasured.length === pipes.length ? 'All its pipe' : `${unmeasured.length} of its ${pipes.length} pipes`} are taken as long as they are drawn.`, 'Cut lengths, flow and volume of the pipe.', 'Enter lengths as they are measured on site.', firstPipe.ref, 'Measured length')]
      : []),
    ...(hanging.length > 0
      ? [about('serves', `${namesOf(hanging.map(({ nozzle }) => nozzle.name))}: taken to serve the space that ${hanging.length === 1 ? 'it hangs' : 'they hang'} in.`, 'Which floor a nozzle covers and whose agent it brings.', 'Choose what the nozzle serves.', hanging[0]?.ref ?? ref, 'Serves')]
      : []),
    ...(supports.length > 0
      ? [about('held-start', 'The discharge assembly is taken to hold the beginning of the pipe, and each rigid support to stand whatever it was entered to bear.', 'Distance to the first support, and thrust.', 'Have the structure behind the supports confirmed, and enter what they bear.', ref, 'Each support bears')]
      : []),
  ];
}
