import type { Derived } from '../../derived/derived.ts';
import type { Design } from '../design/design.ts';
import { agentLines } from './agent-lines.ts';
import { CALCULATION_TOPICS, type Calculation } from './calculation.ts';
import { dischargeLines } from './discharge-lines.ts';
import type { LineContext } from './draft.ts';
import { fillingLines } from './filling-lines.ts';
import { holdLines } from './hold-lines.ts';
import { peopleLines } from './people-lines.ts';
import { strengthLines } from './strength-lines.ts';
import { supervisionLines } from './supervision-lines.ts';
import { supportLines } from './support-lines.ts';
import { ventLines } from './vent-lines.ts';
import { wiringLines } from './wiring-lines.ts';

const OF_ENCLOSURE = [agentLines, peopleLines, fillingLines, ventLines, holdLines];
const OF_NETWORK = [dischargeLines, strengthLines, supportLines, supervisionLines, wiringLines];

/** Every sum of a plan as lines that somebody can follow by hand: by topic in the order of a design, then as the plan holds its things. */
export function calculationsOf({ derived, design }: { readonly derived: Derived; readonly design: Design }): Calculation[] {
  const { basis, settings } = derived.plan;
  const context: LineContext = { derived, design, basis, lengths: settings.lengths };
  const all = [
    ...design.networks.flatMap((network) => OF_NETWORK.map((lines) => lines(context, network))),
    ...design.enclosures.flatMap((enclosure) => OF_ENCLOSURE.map((lines) => lines(context, enclosure))),
  ];
  return CALCULATION_TOPICS.flatMap((topic) => all.filter((calculation) => calculation.topic === topic));
}
