import type { Shutdown } from './plan.ts';

/** What a row of the release matrix shuts, in the user's words. */
export const SHUTDOWN_WORDS: Readonly<Record<Shutdown['kind'], string>> = {
  damper: 'Damper',
  fan: 'Fan',
  door: 'Door holder',
  power: 'Power',
  fuel: 'Fuel',
  process: 'Process',
  other: 'Something else',
};

/** On what it is shut, in the order in which a fire brings it about. */
export const SHUTDOWN_ON_WORDS: Readonly<Record<Shutdown['on'], string>> = {
  'first-detector': 'First detector',
  'second-detector': 'Second detector',
  'manual-release': 'Manual release',
  release: 'Release of the agent',
};
