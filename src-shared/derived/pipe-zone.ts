import type { Network } from '../model/plan.ts';

/** Pressure that pipe must stand: `high` is that of the cylinder, `low` what a regulator lets through. */
export type PressureZone = 'high' | 'low';

/**
 * The zone of all drawn pipe of a network. It stands behind the discharge assembly: with a regulator in it the pipe is
 * of the low-pressure side, without one, or while nobody has entered the assembly, of the high-pressure side.
 */
export const pipeZoneOf = ({ assembly }: Pick<Network, 'assembly'>): PressureZone => (assembly.some(({ kind }) => kind === 'regulator') ? 'low' : 'high');
