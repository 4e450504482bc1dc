import {
  RELATIVE_ROUGHNESS_GREATEST,
  churchillBasis,
  churchillFriction,
  colebrookBasis,
  colebrookFriction,
  flowRegime,
  flowRegimeBasis,
  haalandBasis,
  haalandFriction,
} from './formulas/friction.ts';
import { numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Darcy friction factor of a pipe by three formulas. */
export const frictionTopic: Topic = {
  id: 'friction',
  title: 'Darcy friction factor of a pipe',
  inputs: [
    { kind: 'number', name: 'reynolds', quantity: 'ratio', least: 1, greatest: 1e9, help: 'Reynolds number' },
    { kind: 'number', name: 'relativeRoughness', quantity: 'ratio', least: 0, greatest: RELATIVE_ROUGHNESS_GREATEST, help: 'Roughness over bore; 0 for a smooth pipe' },
  ],
  outputs: {
    colebrook: 'by Colebrook; 64/Re when laminar',
    haaland: 'by Haaland; null when laminar, for which it was not made',
    churchill: 'by Churchill, for every regime',
    regime: 'laminar, transition or turbulent; in the transition Churchill is the one to take, and measured values scatter',
  },
  bases: [colebrookBasis, haalandBasis, churchillBasis, flowRegimeBasis],
  run(values) {
    const reynolds = numberGiven(values, 'reynolds');
    const relativeRoughness = numberGiven(values, 'relativeRoughness');
    const regime = flowRegime(reynolds);
    return {
      colebrook: colebrookFriction(reynolds, relativeRoughness),
      haaland: regime === 'laminar' ? null : haalandFriction(reynolds, relativeRoughness),
      churchill: churchillFriction(reynolds, relativeRoughness),
      regime,
    };
  },
};
