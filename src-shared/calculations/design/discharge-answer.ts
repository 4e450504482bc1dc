import type { Design, NetworkDesign } from './design.ts';

/** What one network does, base SI. */
export interface NetworkAnswer {
  readonly network: string;
  /** null: a space never comes to 95 % of its design concentration. */
  readonly timeTo95_s: number | null;
  readonly peakFlow_kg_s: number;
  readonly peakPipePressure_Pa: number;
  readonly leastRegulatorTemperature_K: number;
  readonly leastCylinderTemperature_K: number;
  readonly massDischarged_kg: number;
  readonly enclosurePeakPressure_Pa: number;
  readonly nozzles: readonly { readonly name: string; readonly mass_kg: number; readonly peakFlow_kg_s: number; readonly peakPressure_Pa: number; readonly isChoked: boolean }[];
  readonly spaces: readonly { readonly name: string; readonly mass_kg: number; readonly timeTo95_s: number | null; readonly finalConcentration_pct: number }[];
  readonly nodes: readonly { readonly node: string; readonly peakPressure_Pa: number }[];
}

/** What every network of a plan does; the whole plan's figures are those of the worst network. */
export interface DischargeAnswer {
  readonly timeTo95_s: number | null;
  readonly peakFlow_kg_s: number;
  readonly enclosurePeakPressure_Pa: number;
  readonly nozzles: readonly (NetworkAnswer['nozzles'][number] & { readonly network: string })[];
  readonly nodes: readonly (NetworkAnswer['nodes'][number] & { readonly network: string })[];
  readonly networks: readonly NetworkAnswer[];
}

function networkAnswer({ name, network, discharge, shares }: NetworkDesign): NetworkAnswer | string {
  if (!discharge.isKnown) return `The discharge of “${name}” cannot be worked out: ${discharge.because}`;
  const { result, slow, nodeIds } = discharge.sums;
  const spaceName = (key: string): string => (shares.isKnown ? shares.sums.find(({ space }) => space.key === key)?.space.name : undefined) ?? key;
  return {
    network: name,
    timeTo95_s: slow.timeTo95_s ?? null,
    peakFlow_kg_s: result.peakFlow_kg_s,
    peakPipePressure_Pa: result.peakPipePressure_Pa,
    leastRegulatorTemperature_K: result.leastSourceTemperature_K,
    leastCylinderTemperature_K: result.leastCylinderTemperature_K,
    massDischarged_kg: result.massAtStart_kg - result.massLeft_kg,
    enclosurePeakPressure_Pa: Math.max(...result.enclosures.map(({ peakOverpressure_Pa }) => peakOverpressure_Pa)),
    nozzles: result.nozzles.map(({ id, mass_kg, peakFlow_kg_s, peakPressure_Pa, isChokedAtPeak }) => ({ name: network.nozzles[id]?.name ?? id, mass_kg, peakFlow_kg_s, peakPressure_Pa, isChoked: isChokedAtPeak })),
    spaces: slow.spaces.map(({ id, mass_kg, timeTo95_s, concentration_pct }) => ({ name: spaceName(id), mass_kg, timeTo95_s: timeTo95_s ?? null, finalConcentration_pct: concentration_pct.at(-1) ?? 0 })),
    nodes: result.nodes.map(({ peakPressure_Pa }, i) => ({ node: nodeIds[i] ?? String(i), peakPressure_Pa })),
  };
}

/**
 * The discharge of a plan as other programs read it.
 * @returns the answer, or why a network's discharge cannot be worked out
 */
export function dischargeAnswer({ networks }: Design): DischargeAnswer | string {
  if (networks.length === 0) return 'The plan has no pipe network yet.';
  const answers: NetworkAnswer[] = [];
  for (const each of networks) {
    const answer = networkAnswer(each);
    if (typeof answer === 'string') return answer;
    answers.push(answer);
  }
  const times = answers.map(({ timeTo95_s }) => timeTo95_s);
  return {
    timeTo95_s: times.some((time) => time === null) ? null : Math.max(...times.map((time) => time ?? 0)),
    peakFlow_kg_s: Math.max(...answers.map(({ peakFlow_kg_s }) => peakFlow_kg_s)),
    enclosurePeakPressure_Pa: Math.max(...answers.map(({ enclosurePeakPressure_Pa }) => enclosurePeakPressure_Pa)),
    nozzles: answers.flatMap(({ network, nozzles }) => nozzles.map((nozzle) => ({ network, ...nozzle }))),
    nodes: answers.flatMap(({ network, nodes }) => nodes.map((node) => ({ network, ...node }))),
    networks: answers,
  };
}
