import fc from 'fast-check';

/**
 * Property tests try the same cases in every run, so that a run can be repeated; `PROPERTY_SEED=random` tries new ones.
 * A case that fails then stays as a named test of its own.
 */
const SEED = 20_261_125;

const chosen = process.env.PROPERTY_SEED;
if (chosen !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: chosen === undefined ? SEED : Number(chosen) });
