import type { Plan } from './plan.ts';

/**
 * Ids of the files that a plan stands on: floor plans under it, issued sets, the picture of the title block, and
 * photographs from the site. What is named here is never dropped.
 */
export function assetsInUse({ levels, issuedSets, settings, siteRecord }: Pick<Plan, 'levels' | 'issuedSets' | 'settings' | 'siteRecord'>): ReadonlySet<string> {
  const named = [
    ...Object.values(levels).flatMap(({ underlays }) => Object.values(underlays).map(({ asset }) => asset)),
    ...issuedSets.flatMap(({ plan, sheets }) => [plan, sheets]),
    settings.sheets.titleBlock.logo,
    ...Object.values(siteRecord.measurements).flatMap(({ photos }) => photos),
  ];
  return new Set(named.filter((id) => id !== null));
}
