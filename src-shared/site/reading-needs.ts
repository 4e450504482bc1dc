import type { NetworkDesign } from '../calculations/design/design.ts';
import { notWorked, worked } from '../calculations/design/worked.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import type { Evaluation } from '../evaluate.ts';
import { type Plan, type Ref, refKey } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';
import { gaugeOf_Pa, psi_Pa } from '../units/convert.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { CHARGE_SOURCE, chargeBandAt } from './charge-band.ts';
import { circuitNeeds } from './circuit-needs.ts';
import { namesByKey } from './name-of-key.ts';
import type { ReadingNeed } from './reading-need.ts';

/** Pneumatic test of the pipe: 40 psi for 10 min, and what it may lose [Pa]. */
export const PIPE_TEST_Pa = psi_Pa(40);
export const PIPE_TEST_LOSS_Pa = psi_Pa(8);
const PIPE_TEST_SOURCE = 'NFPA 2001; NYC 3 RCNY 904-01: 40 psi for 10 min, no more than 8 psi lost';
/** Below it air is short of oxygen [vol %]; above the other it feeds a fire. */
const LEAST_OXYGEN_pct = 19.5;
const MOST_OXYGEN_pct = 23.5;

const LOOKED_AT = { bounds: () => null, after: [], proved: null } as const;

function pipeNeeds(plan: Plan, { ref, network, pipes, nozzles }: DerivedNetwork): ReadingNeed[] {
  const { lengths } = plan.settings;
  const [from, loss] = [PIPE_TEST_Pa, PIPE_TEST_LOSS_Pa].map((value) => formatQuantity(value, 'pressureLoss', lengths));
  const test: ReadingNeed = {
    point: 'H5', kind: 'pipe-test', about: refKey(ref), name: network.name, asks: `at most ${loss} lost in 10 min from ${from}`, source: PIPE_TEST_SOURCE,
    bounds: () => worked({ least: 0, most: PIPE_TEST_LOSS_Pa }), after: [], proved: null, remedy: 'Find the leak with soap water, make it tight and test again.',
  };
  const puffs = nozzles.map((nozzle): ReadingNeed => ({
    ...LOOKED_AT, point: 'H5', kind: 'puff', about: refKey(nozzle.ref), name: thingName(plan, nozzle.ref), asks: 'gas comes out of every hole; nobody in the room', source: 'NFPA 2001, memory', remedy: 'Take the nozzle down and clear it.',
  }));
  return pipes.length > 0 ? [test, ...puffs] : puffs;
}

function pressureNeeds(plan: Plan, { ref, network, supervision }: NetworkDesign): ReadingNeed[] {
  const { lengths } = plan.settings;
  const gauge = (value_Pa: number): string => formatQuantity(gaugeOf_Pa(value_Pa), 'gaugePressure', lengths);
  const usual = supervision.isKnown ? chargeBandAt(supervision.sums, supervision.sums.fillTemperature_K) : supervision;
  const asks = supervision.isKnown && usual.isKnown ? `as the filling chart says: ${gauge(usual.sums.least_Pa)} to ${gauge(usual.sums.most_Pa)} at ${formatQuantity(supervision.sums.fillTemperature_K, 'temperature', lengths)}` : 'as the filling chart says for its temperature';
  return Object.values(network.cylinders).map((cylinder): ReadingNeed => {
    const about: Ref = { kind: 'cylinder', network: ref.id, id: cylinder.id };
    return {
      point: 'H12', kind: 'pressure', about: refKey(about), name: thingName(plan, about), asks, source: CHARGE_SOURCE, after: [], proved: null, remedy: 'Have it refilled or replaced before it is armed.',
      bounds({ temperature_K }) {
        if (temperature_K === null) return notWorked('the temperature of the cylinder is not logged: without it its pressure says nothing.');
        if (!supervision.isKnown) return supervision;
        const band = chargeBandAt(supervision.sums, temperature_K);
        return band.isKnown ? worked({ least: band.sums.least_Pa, most: band.sums.most_Pa }) : band;
      },
    };
  });
}

/** Oxygen that was read somewhere: nobody has to, but what was read must be enough. */
function oxygenNeeds(plan: Plan): ReadingNeed[] {
  const { log } = plan.siteRecord;
  const names = namesByKey(plan);
  const places = [...new Set(log.filter(({ kind }) => kind === 'oxygen').map(({ about }) => about))];
  return places.map((about) => ({
    point: 'H5', kind: 'oxygen', about, name: about === '' ? 'Room' : (names.get(about) ?? 'Room'), asks: `${LEAST_OXYGEN_pct} to ${MOST_OXYGEN_pct} %`, source: '29 CFR 1910.134 and 1910.146; the upper limit from memory',
    bounds: () => worked({ least: LEAST_OXYGEN_pct, most: MOST_OXYGEN_pct }), after: ['puff'], proved: null, remedy: 'Leave the room, ventilate it and read again before anybody goes in.',
  }));
}

/** Networks with anything on them. */
export const builtNetworks = ({ derived }: Pick<Evaluation, 'derived'>): readonly DerivedNetwork[] =>
  derived.networks.filter(({ network, pipes, nozzles }) => pipes.length > 0 || nozzles.length > 0 || Object.keys(network.cylinders).length > 0);

/** Every reading that a hold point stands on, in the order of the work. */
export function readingNeeds(evaluation: Pick<Evaluation, 'derived' | 'design'>): ReadingNeed[] {
  const { derived: { plan }, design } = evaluation;
  const built = builtNetworks(evaluation);
  const sums = design.networks.filter(({ ref }) => built.some((each) => each.ref.id === ref.id));
  const circuits = sums.flatMap((network) => circuitNeeds(network, plan.settings.lengths));
  const clear: ReadingNeed = { ...LOOKED_AT, point: 'H12', kind: 'panel-clear', about: '', name: 'Releasing panel', asks: 'no alarm, no trouble, nothing held, after the last test under voltage', source: 'common practice', after: ['live', 'alarm'], remedy: 'Clear what the panel shows before anything is connected.' };
  return [
    ...built.flatMap((network) => pipeNeeds(plan, network)),
    ...oxygenNeeds(plan),
    ...circuits.filter(({ point }) => point === 'H9'),
    ...(built.length > 0 ? [clear] : []),
    ...circuits.filter(({ point }) => point === 'H12'),
    ...sums.flatMap((network) => pressureNeeds(plan, network)),
  ];
}
