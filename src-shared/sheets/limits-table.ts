import type { Derived } from '../derived/derived.ts';
import type { Settings } from '../model/plan.ts';
import { LIMIT_CATALOGUE, LIMIT_KEYS } from '../profile/limit-catalogue.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Table } from './tables.ts';

/** Profiles that the networks of the plan rest on, each once. */
export function profilesInUse({ networks }: Derived): UnitProfile[] {
  const found = new Map<string, UnitProfile>();
  for (const { profile } of networks) if (profile) found.set(profile.id, profile);
  return [...found.values()];
}

function footprintWords({ footprint }: UnitProfile, lengths: Settings['lengths']): readonly [string, string] {
  if (!footprint) return ['blank', ''];
  const length = (value_m: number): string => formatQuantity(value_m, 'length', lengths);
  return [footprint.shape === 'circle' ? `circle, radius ${length(footprint.radius_m)}` : `${length(footprint.length_m)} × ${length(footprint.width_m)}`, footprint.source];
}

/** Every limit of a unit profile with its source; a blank one says so, for its checks are not done. */
export function limitsTable(profile: UnitProfile, lengths: Settings['lengths']): Table {
  const [area, areaSource] = footprintWords(profile, lengths);
  const blank = LIMIT_KEYS.filter((key) => !profile.limits[key]).length + (profile.footprint ? 0 : 1);
  return {
    title: `Limits of the unit: ${profile.name}`,
    shortTitle: 'Limits of the unit',
    note: `${profile.isSample ? 'SAMPLE PROFILE, invented: nothing may be built from it. ' : ''}${blank === 0 ? 'No limit is blank.' : `${blank} blank: what rests on a blank limit is not checked.`}`,
    columns: [{ head: 'Limit', isWide: true }, { head: 'Value', align: 'right', font: 'bold' }, { head: 'Source' }],
    rows: [
      ...LIMIT_KEYS.map((key) => {
        const limit = profile.limits[key];
        const { label, kind } = LIMIT_CATALOGUE[key];
        return [label, limit ? formatQuantity(limit.value, kind, lengths) : 'BLANK', limit?.source ?? 'enter it from the manual'];
      }),
      ['Floor covered by one nozzle', area, areaSource],
      ['Pipe sizes', profile.pipeSizes.length > 0 ? profile.pipeSizes.join(', ') : 'BLANK', profile.schedule ? `Schedule ${profile.schedule}` : ''],
    ],
  };
}
