import { agentQuantityTopic } from './agent-quantity.ts';
import { blowdownTopic } from './blowdown.ts';
import { conduitFillTopic } from './conduit-fill.ts';
import { cutLengthTopic } from './cut-length.ts';
import { cylinderTopic } from './cylinder.ts';
import { exposureTopic } from './exposure.ts';
import { fannoTopic } from './fanno.ts';
import { frictionTopic } from './friction.ts';
import { holdTimeTopic } from './hold-time.ts';
import { isothermalPipeTopic } from './isothermal-pipe.ts';
import { nitrogenTopic } from './nitrogen.ts';
import { orificeTopic } from './orifice.ts';
import { pipeRatingTopic } from './pipe-rating.ts';
import { reliefVentTopic } from './relief-vent.ts';
import type { Topic } from './topic.ts';
import { voltageDropTopic } from './voltage-drop.ts';

/** Every calculator, in the order in which a design needs them. */
export const TOPICS: readonly Topic[] = [agentQuantityTopic, exposureTopic, nitrogenTopic, cylinderTopic, frictionTopic, isothermalPipeTopic, fannoTopic, orificeTopic, blowdownTopic, reliefVentTopic, holdTimeTopic, cutLengthTopic, pipeRatingTopic, voltageDropTopic, conduitFillTopic];
