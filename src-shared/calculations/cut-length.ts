import { PIPE_SIZES } from '../profile/pipe-table.ts';
import { cutLengthBasis, cutLength_m } from './formulas/cut-length.ts';
import { THREAD_ENGAGEMENTS, threadEngagementBasis, threadEngagement_m } from './formulas/pipe-threads.ts';
import { FITTING_CLASSES, PIPE_ENDS, type PipeEnd, fittingReachBasis, fittingReach_m } from './formulas/threaded-fittings.ts';
import { choiceGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Length to cut a threaded pipe to, between the centres of two fittings. */
export const cutLengthTopic: Topic = {
  id: 'cut-length',
  title: 'Length to cut a threaded pipe to',
  inputs: [
    { kind: 'choice', name: 'nominalSize', choices: PIPE_SIZES, help: 'Nominal pipe size (NPS)' },
    { kind: 'choice', name: 'fittingClass', choices: FITTING_CLASSES, help: 'Class of the malleable threaded fittings' },
    { kind: 'choice', name: 'from', choices: PIPE_ENDS, help: 'What is at the first end; open is a bare end' },
    { kind: 'choice', name: 'to', choices: PIPE_ENDS, help: 'What is at the other end' },
    { kind: 'number', name: 'centreToCentre', quantity: 'length', least: 0.001, greatest: 1000, help: 'Between the centres of the fittings' },
    { kind: 'choice', name: 'engagement', choices: THREAD_ENGAGEMENTS, standard: 'shop', help: 'Thread engagement that shops allow for, or that of the thread standard' },
  ],
  outputs: {
    cutLength_m: 'length of the pipe, with both threads',
    fromReach_m: 'centre of the first fitting to the end of its thread',
    toReach_m: 'the same of the other fitting',
    engagement_m: 'how far the pipe goes into a fitting',
  },
  bases: [cutLengthBasis, fittingReachBasis, threadEngagementBasis],
  run(values) {
    const size = choiceGiven(values, 'nominalSize', PIPE_SIZES);
    const fittingClass = choiceGiven(values, 'fittingClass', FITTING_CLASSES);
    const ends = [choiceGiven(values, 'from', PIPE_ENDS), choiceGiven(values, 'to', PIPE_ENDS)] as const;
    const engagement_m = threadEngagement_m(size, choiceGiven(values, 'engagement', THREAD_ENGAGEMENTS));
    const reachOf = (end: PipeEnd): number => fittingReach_m(size, fittingClass, end);
    const engagementOf = (end: PipeEnd): number => (end === 'open' ? 0 : engagement_m);
    const [from, to] = ends;
    return {
      cutLength_m: cutLength_m(numberGiven(values, 'centreToCentre'), [reachOf(from), reachOf(to)], [engagementOf(from), engagementOf(to)]),
      fromReach_m: reachOf(from),
      toReach_m: reachOf(to),
      engagement_m,
    };
  },
};
