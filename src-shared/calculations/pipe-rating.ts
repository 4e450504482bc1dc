import { PIPE_SCHEDULES, PIPE_SIZES, PIPE_TABLE, pipeOutside_m } from '../profile/pipe-table.ts';
import { inches_m } from '../units/convert.ts';
import { FORGED_CLASSES, fittingRatingBasis, fittingRating_Pa, forgedRatingBasis, forgedRating_Pa, isClassForService } from './formulas/fitting-rating.ts';
import { pipeRatingBasis, pipeRating_Pa } from './formulas/pipe-rating.ts';
import { threadDepthBasis, threadDepth_m } from './formulas/pipe-threads.ts';
import { FITTING_CLASSES } from './formulas/threaded-fittings.ts';
import { choiceGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

const JOINTS = ['threaded', 'welded'] as const;
const CLASSES = [...FITTING_CLASSES, ...FORGED_CLASSES] as const;

/** Greatest gauge pressure of a pipe and of the fittings on it. */
export const pipeRatingTopic: Topic = {
  id: 'pipe-rating',
  title: 'Greatest gauge pressure of pipe and fittings',
  inputs: [
    { kind: 'choice', name: 'nominalSize', choices: PIPE_SIZES, help: 'Nominal pipe size (NPS)' },
    { kind: 'choice', name: 'schedule', choices: PIPE_SCHEDULES, help: 'Wall schedule' },
    { kind: 'number', name: 'allowableStress', quantity: 'stress', least: 1e6, greatest: 1e9, help: "Allowable stress of the pipe's steel with the efficiency of its seam" },
    { kind: 'choice', name: 'joint', choices: JOINTS, help: 'How the pipe is joined' },
    { kind: 'number', name: 'millFactor', quantity: 'ratio', least: 0.5, greatest: 1, help: 'Share of the nominal wall that is sure to be there; 0.875 for a mill tolerance of 12.5 %' },
    { kind: 'number', name: 'y', quantity: 'ratio', least: 0, greatest: 0.7, help: 'Temperature coefficient of ASME B31.1, 0.4 for steel; 0 for the simple form' },
    { kind: 'choice', name: 'fittingClass', choices: CLASSES, isOptional: true, help: 'Class of the threaded fittings: 150 or 300 malleable, 2000 and up forged' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: 244, greatest: 477.5, standard: 293.15, help: 'Of the gas, for the rating of malleable fittings' },
  ],
  outputs: {
    pipePressure_Pa: 'greatest pressure in the pipe, gauge',
    fittingPressure_Pa: 'rating of the fittings, gauge; null when no class is given',
    lineLimit_Pa: 'the lower of the two, gauge',
    weakest: 'which of the two it is',
    fittingForService: 'false for Class 150: not for this service, whatever the pressure; null when no class is given',
  },
  bases: [pipeRatingBasis, threadDepthBasis, fittingRatingBasis, forgedRatingBasis],
  run(values) {
    const size = choiceGiven(values, 'nominalSize', PIPE_SIZES);
    const wall_m = inches_m(PIPE_TABLE[size].wall_in[choiceGiven(values, 'schedule', PIPE_SCHEDULES)]);
    const thread_m = choiceGiven(values, 'joint', JOINTS) === 'threaded' ? threadDepth_m(size) : 0;
    const steel = [numberGiven(values, 'allowableStress'), numberGiven(values, 'millFactor'), numberGiven(values, 'y')] as const;
    const pipe_Pa = pipeRating_Pa(pipeOutside_m(size), wall_m, thread_m, ...steel);
    const fittingClass = values.fittingClass === undefined ? undefined : choiceGiven(values, 'fittingClass', CLASSES);
    const malleable = FITTING_CLASSES.find((each) => each === fittingClass);
    const forged = FORGED_CLASSES.find((each) => each === fittingClass);
    const fitting_Pa = malleable ? fittingRating_Pa(size, malleable, numberGiven(values, 'temperature')) : forged ? forgedRating_Pa(size, forged, ...steel) : null;
    return {
      pipePressure_Pa: pipe_Pa,
      fittingPressure_Pa: fitting_Pa,
      lineLimit_Pa: Math.min(pipe_Pa, fitting_Pa ?? Number.POSITIVE_INFINITY),
      weakest: fitting_Pa !== null && fitting_Pa < pipe_Pa ? 'fitting' : 'pipe',
      fittingForService: fittingClass === undefined ? null : isClassForService(fittingClass),
    };
  },
};
