import { psi_Pa } from '../../units/convert.ts';
import { placeOn } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ShapedNetwork, shapedNetworkSubjects } from './shaped-networks.ts';

/** Greatest gauge pressure at which a street elbow may be used. */
const GREATEST_Pa = psi_Pa(600);
const SOURCE = 'ASME B16.3-2011';

/**
 * P15: street elbows stand only where the pressure stays low: their outside thread is weaker than the rest.
 * Measure: greatest gauge pressure that can come to a street elbow [Pa]. Limit: 600 psi gauge.
 * Not checked: there is one, and the pressure on its side of the regulator is not known. Without any it is kept.
 */
export const p15StreetElbow = defineRule<ShapedNetwork>({
  id: 'P15',
  title: 'Street elbow',
  severity: 'warn',
  measure: 'gaugePressure',
  basis: { formula: 'greatest gauge pressure at every street elbow ≤ 600 psi', source: SOURCE, caution: 'Where the listing or the manual forbids street elbows, that governs.' },
  subjects: shapedNetworkSubjects,
  check({ network, shape }, { say }) {
    const street = shape.fittings.filter(({ isStreet }) => isStreet);
    if (street.length === 0) return { kind: 'judged', isKept: true, text: 'Has no street elbow.' };
    const all = placeOn(network, street.map(({ at }) => at));
    const { zones } = network;
    if (!zones.isKnown) return notChecked(`the pressure at a street elbow is not known: ${zones.because}`, all);
    const judged = street.map((elbow) => ({ elbow, zone: zones.sums.find(({ fittings: on }) => on.some(({ fitting }) => fitting.node === elbow.node)) }));
    const [worst] = [...judged].sort((a, b) => (b.zone?.greatest_Pa ?? Number.POSITIVE_INFINITY) - (a.zone?.greatest_Pa ?? Number.POSITIVE_INFINITY));
    const tooHigh = judged.filter(({ zone }) => zone && !(GREATEST_Pa - zone.greatest_Pa >= -slackOf(GREATEST_Pa)));
    if (tooHigh.length === 0 && judged.some(({ zone }) => !zone)) return notChecked('on which side of the regulator a street elbow stands is not known.', all);
    const zone = (tooHigh[0] ?? worst)?.zone;
    if (!zone) return notChecked('the pressure at a street elbow is not known.', all);
    const figures = atMost(zone.greatest_Pa, { value: GREATEST_Pa, source: SOURCE }, slackOf(GREATEST_Pa));
    const { value: comes, limit: most } = say.quantityAgainst(zone.greatest_Pa, GREATEST_Pa, 'gaugePressure');
    const many = street.length === 1 ? 'Its street elbow sees' : `Its ${street.length} street elbows see`;
    return {
      ...figures,
      text: figures.isKept
        ? `${many} no more than ${comes} (${zone.greatestSource}); ${most} is allowed.`
        : `${tooHigh.length === 1 ? 'A street elbow stands' : `${tooHigh.length} street elbows stand`} where ${comes} may come (${zone.greatestSource}); only ${most} is allowed. Use an elbow and a nipple.`,
      place: figures.isKept ? all : placeOn(network, tooHigh.map(({ elbow }) => elbow.at)),
      cure: figures.isKept
        ? undefined
        : {
            kind: 'set-parts',
            text: tooHigh.length === 1 ? 'Put an elbow and a nipple in its place' : 'Put an elbow and a nipple in place of each',
            network: network.ref.id,
            nodes: tooHigh.map(({ elbow }) => elbow.node),
            part: null,
          },
    };
  },
});
