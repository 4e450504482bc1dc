import {
  CONDUCTOR_GAUGES,
  CONDUCTOR_TYPES,
  CONDUITS,
  CONDUIT_SIZES,
  allowedFill,
  allowedFillBasis,
  conductorAreaBasis,
  conductorArea_m2,
  conduitAreaBasis,
  conduitArea_m2,
} from './formulas/conduit-fill.ts';
import { choiceGiven, listGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** How full a conduit is. */
export const conduitFillTopic: Topic = {
  id: 'conduit-fill',
  title: 'How full a conduit is',
  inputs: [
    { kind: 'choice', name: 'conduit', choices: CONDUITS, help: 'Electrical metallic tubing (EMT) or flexible metal conduit (FMC)' },
    { kind: 'choice', name: 'tradeSize', choices: CONDUIT_SIZES, help: 'Trade size: 1/2 or 3/4 of EMT, 3/8 or 1/2 of FMC' },
    {
      kind: 'list',
      name: 'conductors',
      help: 'The conductors in it',
      inputs: [
        { kind: 'choice', name: 'type', choices: CONDUCTOR_TYPES, help: 'Insulation: THHN of 14, 12 or 10, TFFN of 18 or 16' },
        { kind: 'choice', name: 'wireGauge', choices: CONDUCTOR_GAUGES, help: 'American wire gauge' },
        { kind: 'number', name: 'count', quantity: 'count', least: 1, greatest: 1000, help: 'How many of them' },
      ],
    },
  ],
  outputs: {
    area_m2: 'area of the conductors',
    allowed_m2: 'area they may take',
    fill_pct: "share of the conduit's area that they take",
    fits: 'whether they may be pulled in',
  },
  bases: [allowedFillBasis, conduitAreaBasis, conductorAreaBasis],
  run(values) {
    const inside_m2 = conduitArea_m2(choiceGiven(values, 'conduit', CONDUITS), choiceGiven(values, 'tradeSize', CONDUIT_SIZES));
    const groups = listGiven(values, 'conductors').map((group) => ({
      area_m2: conductorArea_m2(choiceGiven(group, 'type', CONDUCTOR_TYPES), choiceGiven(group, 'wireGauge', CONDUCTOR_GAUGES)),
      count: numberGiven(group, 'count'),
    }));
    const area_m2 = groups.reduce((sum, each) => sum + each.area_m2 * each.count, 0);
    const allowed_m2 = inside_m2 * allowedFill(groups.reduce((sum, { count }) => sum + count, 0));
    return { area_m2, allowed_m2, fill_pct: (100 * area_m2) / inside_m2, fits: area_m2 <= allowed_m2 };
  },
};
